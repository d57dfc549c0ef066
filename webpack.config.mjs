import CopyPlugin from 'copy-webpack-plugin';
import { EsbuildPlugin } from 'esbuild-loader';
import HtmlPlugin from 'html-webpack-plugin';
import CssPlugin from 'mini-css-extract-plugin';
import { fileURLToPath } from 'node:url';
import { catalogue } from './src/make/catalogue.mjs';
import { Licences } from './src/make/licences.mjs';
import { place, servedAt } from './src/make/served.mjs';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));

const typescript = (target) => ({
  test: /\.tsx?$/,
  loader: 'esbuild-loader',
  options: { target, tsconfig: here('tsconfig.json') },
});
/** Fields of classes as plain assignments: defined one by one they were several kilobytes in an older engine. */
const assigned = (target) => ({
  ...typescript(target),
  options: { target, tsconfigRaw: { compilerOptions: { useDefineForClassFields: false } } },
});
const decimals = { test: /[\\/]decimal\.mjs$/, loader: here('src/make/money-alone.mjs') };
const everywhere = {
  context: here('.'),
  resolve: { extensions: ['.ts', '.tsx', '.js'] },
  output: { path: here('dist'), filename: '[name].js' },
};

/** What pages load besides: the solver brings its wasm along, and asks for Node's modules in Node only. */
const page = {
  output: { ...everywhere.output, assetModuleFilename: '[name][ext]' },
  externals: { 'node:module': 'var undefined' },
};

/** Excel's JavaScript-only runtime: one file, for an older engine, with nothing of a page and no word for people in it. */
const functions = (where) => ({
  ...everywhere,
  name: 'functions',
  target: 'es2018',
  output: { ...everywhere.output, chunkFormat: false },
  entry: { functions: './src/excel/functions.ts' },
  module: {
    rules: [
      assigned('es2018'),
      { test: /\.ts$/, enforce: 'pre', loader: here('src/make/for-people.mjs') },
      decimals,
    ],
  },
  optimization: {
    minimizeOptions: {
      javascript: { compress: { passes: 3, pure_getters: true }, format: { comments: false } },
    },
  },
  plugins: [
    new Licences(),
    // The runtime's page on the web is plain: office's runtime first, then the functions.
    new HtmlPlugin({
      filename: 'functions.html',
      template: 'src/excel/functions.html',
      scriptLoading: 'blocking',
    }),
    new CopyPlugin({
      patterns: [
        { from: 'manifest.xml', transform: servedAt(where) },
        { from: 'functions/functions.json', transform: servedAt(where) },
        { from: 'src/excel/icons/*.png', to: 'icons/[name][ext]' },
        { from: 'LICENSE', to: 'LICENSE.txt', toType: 'file' },
      ],
    }),
  ],
});

/** For any JavaScript engine: one file that says `hemledger`, without imports, and what it knows in JSON. */
const bare = {
  ...everywhere,
  name: 'bare',
  target: 'es2018',
  output: {
    ...everywhere.output,
    path: `${everywhere.output.path}/bare`,
    chunkFormat: false,
    library: { name: 'hemledger', type: 'var' },
  },
  entry: { hemledger: './functions/bare.ts' },
  optimization: { minimizer: [new EsbuildPlugin({ target: 'es2018', legalComments: 'none' })] },
  performance: { hints: false },
  module: { rules: [typescript('es2018'), decimals] },
  plugins: [
    new Licences(),
    new CopyPlugin({
      patterns: [
        { from: 'functions/functions.json', to: 'catalogue.json', transform: catalogue },
        { from: 'LICENSE', to: 'LICENSE.txt', toType: 'file' },
      ],
    }),
  ],
};

const pane = {
  ...everywhere,
  ...page,
  name: 'pane',
  target: ['web', 'es2020'],
  // What React does for the pane, Preact does in a tenth of the bytes; the trial's grid needs React itself.
  resolve: {
    ...everywhere.resolve,
    alias: {
      'react/jsx-runtime': 'preact/jsx-runtime',
      'react-dom/client': 'preact/compat/client',
      react: 'preact/compat',
    },
  },
  entry: { pane: './src/excel/pane.ts' },
  optimization: { minimizeOptions: { javascript: { compress: { passes: 2 }, format: { comments: false } } } },
  // Its size is tested; it is fetched once and kept.
  performance: { hints: false },
  module: {
    rules: [
      // The core is pure: what the solver's part does not use of it need not come along.
      { test: /[\\/]src[\\/]core[\\/]/, sideEffects: false },
      typescript('es2020'),
      decimals,
      { test: /\.css$/, use: [CssPlugin.loader, 'css-loader'] },
    ],
  },
  plugins: [
    new Licences(),
    new CssPlugin(),
    new HtmlPlugin({ filename: 'pane.html', template: 'src/excel/pane.html', hash: true }),
  ],
};

/** What Excel opens for “Help on this function”, and how the add-in is installed: plain pages. */
const help = {
  ...everywhere,
  name: 'help',
  target: ['web', 'es2020'],
  entry: { help: './src/pane/help.ts' },
  module: pane.module,
  plugins: [
    new Licences(),
    new CssPlugin(),
    new HtmlPlugin({ filename: 'help.html', template: 'src/pane/help.html', hash: true }),
    new HtmlPlugin({ filename: 'installing.html', template: 'src/pane/installing.html', hash: true }),
    new CopyPlugin({
      patterns: [{ noErrorOnMissing: true, from: 'src/pane/pictures/*.png', to: 'pictures/[name][ext]' }],
    }),
  ],
};

/** The workbook to try in a browser: its grid is large, so it comes in parts. */
const trial = {
  ...everywhere,
  ...page,
  name: 'trial',
  target: ['web', 'es2022'],
  entry: { trial: './src/trial/page.tsx' },
  output: { ...page.output, path: `${everywhere.output.path}/trial` },
  // The usual minimizer takes minutes over the grid.
  optimization: {
    splitChunks: { chunks: 'all' },
    minimizer: [new EsbuildPlugin({ target: 'es2022', legalComments: 'none' })],
  },
  performance: { hints: false },
  module: {
    rules: [typescript('es2022'), { test: /\.css$/, use: [CssPlugin.loader, 'css-loader'] }],
  },
  plugins: [
    new Licences(),
    new CssPlugin(),
    new HtmlPlugin({ filename: 'index.html', template: 'src/trial/page.html' }),
  ],
};

/** The add-in, to be served at `https://host/path`. */
export const addin = (where) => [functions(where), pane, help];

/** Where the add-in will be served: HEMLEDGER_ORIGIN=https://… npm run build */
export default [...addin(place(process.env.HEMLEDGER_ORIGIN)), trial, bare];
