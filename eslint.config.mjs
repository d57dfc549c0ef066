import eslint from '@eslint/js';
import officeAddins from 'eslint-plugin-office-addins';
import tseslint from 'typescript-eslint';

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
    },
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
