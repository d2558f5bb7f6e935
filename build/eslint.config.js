import path from 'node:path';
import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import { defineConfig, globalIgnores } from 'eslint/config';
import globals from 'globals';
import ts from 'typescript-eslint';

// Without this, typescript-eslint takes this file's own folder for the project's root.
const tsconfigRootDir = path.resolve(import.meta.dirname, '..');

export default defineConfig(
  globalIgnores(['out/', 'node_modules/', 'coverage/']),
  js.configs.recommended,
  ...ts.configs.strictTypeChecked,
  ...svelte.configs.recommended,
  {
    languageOptions: {
      globals: { ...globals.node, ...globals.browser },
      parserOptions: { projectService: true, tsconfigRootDir, extraFileExtensions: ['.svelte'] },
    },
    rules: {
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      'func-style': ['error', 'declaration', { allowArrowFunctions: true }],
      // In Electron an ESM main module that awaits 'ready' at its top level never gets it.
      'no-restricted-syntax': [
        'error',
        {
          selector: 'Program > ExpressionStatement > AwaitExpression CallExpression[callee.property.name="whenReady"]',
          message: 'app.whenReady() never resolves in a top-level await.',
        },
      ],
    },
  },
  { files: ['**/*.svelte', '**/*.svelte.ts'], languageOptions: { parserOptions: { parser: ts.parser } } },
  {
    files: ['core/**', 'shared/**'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              group: ['electron', 'node:*', 'node-hid', 'svelte', 'svelte/*', '**/renderer/**', '**/electron/**'],
              message: 'core and shared are pure.',
            },
          ],
        },
      ],
    },
  },
  {
    files: ['tests/**'],
    rules: { '@typescript-eslint/no-non-null-assertion': 'off', '@typescript-eslint/no-empty-function': 'off' },
  },
  { files: ['**/*.{js,cjs}'], ...ts.configs.disableTypeChecked },
);
