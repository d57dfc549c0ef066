/**
 * What the code uses beyond ES2018, brought along for Excel's own JavaScript runtime on older machines.
 * The core's tsconfig allows exactly these: ES2019, and `at` of an array.
 */
import 'core-js/actual/array/at';
import 'core-js/actual/array/flat';
import 'core-js/actual/array/flat-map';
import 'core-js/actual/object/from-entries';
import 'core-js/actual/string/trim-end';
import 'core-js/actual/string/trim-start';
