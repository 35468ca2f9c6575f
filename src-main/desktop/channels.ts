/** Names of the messages between preload and main process. */
import type { HostEvents } from '../../shared-types/bridge'

/** Window asks, main answers: one channel per operation. */
export const operationChannel = (name: string) => `ask/${name}`
/** Main tells. */
export const eventChannel = (name: keyof HostEvents) => `tell/${name}`

export const EXPORT_CHANNEL = 'export/run'
export const EXPORT_PROGRESS_CHANNEL = 'export/progress'
export const EXPORT_CANCEL_CHANNEL = 'export/cancel'
export const BEFORE_CLOSE_CHANNEL = 'close/asked'
export const READY_TO_CLOSE_CHANNEL = 'close/ready'
