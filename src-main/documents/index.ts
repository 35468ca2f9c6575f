/** The room of documents: open, save, examples. */
export { openProject, readProjectText } from './read'
export { explainOutcome } from './outcome'
export type { OpenOutcome, TextOutcome } from './outcome'
export { saveProject } from './save'
export { explainWriteFailure, replaceFile, WriteFailure } from './replace-file'
export { machineFiles } from './file-port'
export type { FilePort } from './file-port'
export { listExamples } from './examples'
