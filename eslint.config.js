import js from '@eslint/js'
import svelte from 'eslint-plugin-svelte'
import tseslint from 'typescript-eslint'

/** Import patterns that a room must not use: see docs/architecture.md, "Who may know whom". */
const forbid = (...groups) => ({
  'no-restricted-imports': ['error', { patterns: groups }],
})
const nodeBuiltins = { regex: '^node:', message: 'the engine knows no Node built-in' }
const engineStrangers = {
  regex: '^(electron|svelte|konva|pdf-lib|fontkit|commander|write-file-atomic)(/|$)',
  message: 'the engine knows no window, paper or machine',
}
const rooms = (...names) => ({
  regex: `(^|/)(${names.join('|')})/`,
  message: 'this room must not know that one (docs/architecture.md)',
})

const pdfWriters = {
  regex: '^(pdf-lib|fontkit)(/|$)',
  message: 'pdf-lib is known only in src-main/paper/pdf',
}
/** Where pictures and pages are made, the plan says what it is the plan of, with every default. */
const projects = {
  regex: '(^|/)shared-types/project$',
  importNames: ['Project'],
  message: 'figures and paper draw from the plan alone (plan.settled)',
}

export default tseslint.config(
  { ignores: ['out/', '.svelte-check/', '**/node_modules/', 'dist/', 'tests/fixtures/'] },
  js.configs.recommended,
  ...tseslint.configs.recommended,
  ...svelte.configs.recommended,
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: tseslint.parser } },
  },
  {
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'no-console': 'error',
      'prefer-const': 'error',
    },
  },
  {
    files: ['**/*.svelte'],
    // Props are taken apart with `let`, some of them bindable; what a name means is checked by svelte-check.
    rules: {
      'prefer-const': 'off',
      'svelte/prefer-const': ['error', { destructuring: 'all' }],
      'no-undef': 'off',
    },
  },
  {
    // Loaded by Node with `--require`, before any module.
    files: ['**/*.cjs'],
    languageOptions: {
      globals: { require: 'readonly', process: 'readonly', __filename: 'readonly' },
    },
    rules: { '@typescript-eslint/no-require-imports': 'off' },
  },
  {
    files: ['scripts/**', 'packing/**', 'bench/**', 'eslint.config.js'],
    languageOptions: {
      globals: {
        Buffer: 'readonly',
        globalThis: 'readonly',
        process: 'readonly',
        console: 'readonly',
        // Functions that run in a page under test.
        document: 'readonly',
        URL: 'readonly',
        setTimeout: 'readonly',
        setInterval: 'readonly',
        clearTimeout: 'readonly',
        clearInterval: 'readonly',
        performance: 'readonly',
      },
    },
    rules: { 'no-console': 'off' },
  },
  {
    files: ['shared-types/**/*.ts'],
    rules: forbid(nodeBuiltins, engineStrangers, rooms('src-core', 'src-main', 'src-renderer')),
  },
  {
    files: ['src-core/**/*.ts'],
    rules: {
      ...forbid(nodeBuiltins, engineStrangers, rooms('src-main', 'src-renderer')),
      'no-restricted-globals': ['error', 'window', 'document', 'process', 'Buffer', 'setTimeout', 'fetch'],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'a seed is passed in' },
        { object: 'Date', property: 'now', message: 'the engine asks no clock' },
      ],
    },
  },
  {
    files: ['src-core/figures/**/*.ts'],
    rules: forbid(nodeBuiltins, engineStrangers, rooms('src-main', 'src-renderer'), projects),
  },
  { files: ['src-main/**/*.ts'], rules: forbid(rooms('src-renderer')) },
  {
    files: ['src-main/**/*.ts'],
    ignores: ['src-main/paper/pdf/**'],
    rules: forbid(rooms('src-renderer'), pdfWriters),
  },
  { files: ['src-main/paper/**/*.ts'], rules: forbid(rooms('src-renderer'), pdfWriters, projects) },
  { files: ['src-main/paper/pdf/**/*.ts'], rules: forbid(rooms('src-renderer'), projects) },
  {
    files: ['src-renderer/**'],
    rules: {
      ...forbid(nodeBuiltins, rooms('src-main')),
      // svelte-check knows the names of the browser.
      'no-undef': 'off',
      // Sets and maps in the state are replaced whole, never changed in place.
      'svelte/prefer-svelte-reactivity': 'off',
    },
  },
)
