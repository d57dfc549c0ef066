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
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      eqeqeq: 'error',
      'no-console': 'error',
    },
  },
  {
    files: ['src/file/**', 'src/make/**', 'tests/**'],
    rules: { 'no-console': 'off' },
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
