/**
 * What the code uses beyond ES2018, brought along for Excel's own JavaScript runtime on older machines.
 * The core's tsconfig allows exactly these: ES2019, and `at` of an array.
 */
import 'core-js/es/array/at';
import 'core-js/es/array/flat';
import 'core-js/es/array/flat-map';
import 'core-js/es/object/from-entries';
import 'core-js/es/string/trim-end';
import 'core-js/es/string/trim-start';
