/** Loaded for what it does to the process, see src-main/paper/pdfjs.ts. */
declare module 'pdfjs-dist/legacy/build/pdf.worker.mjs'
