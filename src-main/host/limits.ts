/** Largest project text that crosses the bridge, in UTF-16 units: hundreds of times a big blanket's. */
export const TEXT_LIMIT = 16_000_000
/** Largest message of the browser, in bytes: such a text in UTF-8, escaped as JSON, and its envelope. */
export const MESSAGE_LIMIT = 50_000_000
