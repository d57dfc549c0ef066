import { readFileSync } from 'node:fs';
import eslint from '@eslint/js';
import officeAddins from 'eslint-plugin-office-addins';
import tseslint from 'typescript-eslint';

/** Files with a function above a ceiling, each with its highest figure: the list only grows shorter. */
const above = JSON.parse(readFileSync(new URL('tests/ceilings.json', import.meta.url), 'utf8'));

const ceilings = ({ complexity = 15, 'max-lines-per-function': max = 80, 'max-params': most = 5 }) => ({
  complexity: ['error', complexity],
  'max-lines-per-function': ['error', { max, skipBlankLines: true, skipComments: true }],
  'max-params': ['error', most],
});

export default tseslint.config(
  { ignores: ['dist/', 'out/', 'node_modules/', 'coverage/'] },
  eslint.configs.recommended,
  {
    files: ['**/*.{ts,tsx}'],
    extends: [tseslint.configs.strict, tseslint.configs.stylistic],
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      '@typescript-eslint/await-thenable': 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_', destructuredArrayIgnorePattern: '^_' },
      ],
      eqeqeq: 'error',
      'no-console': 'error',
      'no-restricted-syntax': [
        'error',
        {
          // Whatever is declared: a parameter, a variable, a part of an object taken out.
          selector:
            ':matches(:function, TSFunctionType, TSMethodSignature, TSEmptyBodyFunctionExpression) > Identifier.params[name="of"], ' +
            ':matches(AssignmentPattern > .left, RestElement > .argument, VariableDeclarator > .id, ArrayPattern > .elements, TSParameterProperty > .parameter, ObjectPattern > Property > .value)[name="of"]',
          message: 'A name says what is meant, and can be searched for: not “of”.',
        },
      ],
    },
  },
  { files: ['src/**/*.{ts,tsx}', 'functions/**/*.ts'], rules: ceilings({}) },
  ...Object.entries(above).map(([file, figures]) => ({ files: [file], rules: ceilings(figures) })),
  {
    // A sentence takes as many words as it says.
    files: ['src/core/findings/**'],
    rules: { 'max-params': 'off' },
  },
  {
    files: ['src/file/**', 'src/make/**', 'src/trial/start.ts', 'tests/**'],
    rules: { 'no-console': 'off' },
  },
  {
    // A test that meets nothing where something must be fails, as it should.
    files: ['tests/**'],
    rules: { '@typescript-eslint/no-non-null-assertion': 'off' },
  },
  {
    files: ['**/*.mjs'],
    languageOptions: { globals: { console: 'readonly', process: 'readonly', URL: 'readonly' } },
  },
  {
    files: ['src/excel/**/*.{ts,tsx}'],
    plugins: { 'office-addins': officeAddins },
    rules: Object.fromEntries(
      Object.keys(officeAddins.rules).map((rule) => [`office-addins/${rule}`, 'error']),
    ),
  },
);
