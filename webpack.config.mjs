import CopyPlugin from 'copy-webpack-plugin';
import { EsbuildPlugin } from 'esbuild-loader';
import HtmlPlugin from 'html-webpack-plugin';
import CssPlugin from 'mini-css-extract-plugin';
import { fileURLToPath } from 'node:url';

const DEVELOPMENT = 'https://localhost:3000';
/** Where the add-in will be served: HEMLEDGER_ORIGIN=https://… npm run build */
const origin = process.env.HEMLEDGER_ORIGIN ?? DEVELOPMENT;
if (!/^https:\/\/[a-z0-9.-]+(:\d+)?$/i.test(origin)) {
  throw new Error(
    `HEMLEDGER_ORIGIN reads “${origin}”. Office loads add-ins over https only: write it like https://addins.example.org, without a path.`,
  );
}
const served = (content) => content.toString().replaceAll(DEVELOPMENT, origin);

const typescript = (target) => ({
  test: /\.tsx?$/,
  loader: 'esbuild-loader',
  options: { target, tsconfig: fileURLToPath(new URL('tsconfig.json', import.meta.url)) },
});
const everywhere = {
  context: fileURLToPath(new URL('.', import.meta.url)),
  resolve: { extensions: ['.ts', '.tsx', '.js'] },
  output: { path: fileURLToPath(new URL('dist', import.meta.url)), filename: '[name].js' },
};

/** What pages load besides: the solver brings its wasm along, and asks for Node's modules in Node only. */
const page = {
  output: { ...everywhere.output, assetModuleFilename: '[name][ext]' },
  externals: { 'node:module': 'var undefined' },
};

/** Excel's JavaScript-only runtime: one file, for an older engine, with nothing of a page in it. */
const functions = {
  ...everywhere,
  name: 'functions',
  target: 'es2018',
  output: { ...everywhere.output, chunkFormat: false },
  entry: { functions: './src/excel/functions.ts' },
  module: { rules: [typescript('es2018')] },
  plugins: [
    // The runtime's page on the web is plain: office's runtime first, then the functions.
    new HtmlPlugin({
      filename: 'functions.html',
      template: 'src/excel/functions.html',
      scriptLoading: 'blocking',
    }),
    new CopyPlugin({
      patterns: [
        { from: 'manifest.xml', transform: served },
        { from: 'functions/functions.json', transform: served },
        { from: 'src/excel/icons/*.png', to: 'icons/[name][ext]' },
      ],
    }),
  ],
};

const pane = {
  ...everywhere,
  ...page,
  name: 'pane',
  target: ['web', 'es2020'],
  entry: { pane: './src/excel/pane.ts' },
  optimization: { minimizer: [new EsbuildPlugin({ target: 'es2020', legalComments: 'external' })] },
  // Its size is Fluent's; it is fetched once and kept.
  performance: { hints: false },
  module: {
    rules: [typescript('es2020'), { test: /\.css$/, use: [CssPlugin.loader, 'css-loader'] }],
  },
  plugins: [new CssPlugin(), new HtmlPlugin({ filename: 'pane.html', template: 'src/excel/pane.html' })],
};

/** What Excel opens for “Help on this function”: a plain page. */
const help = {
  ...everywhere,
  name: 'help',
  target: ['web', 'es2020'],
  entry: { help: './src/pane/help.ts' },
  module: pane.module,
  plugins: [new CssPlugin(), new HtmlPlugin({ filename: 'help.html', template: 'src/pane/help.html' })],
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
    minimizer: [new EsbuildPlugin({ target: 'es2022' })],
  },
  performance: { hints: false },
  module: {
    rules: [typescript('es2022'), { test: /\.css$/, use: [CssPlugin.loader, 'css-loader'] }],
  },
  plugins: [new CssPlugin(), new HtmlPlugin({ filename: 'index.html', template: 'src/trial/page.html' })],
};

export default [functions, pane, help, trial];
