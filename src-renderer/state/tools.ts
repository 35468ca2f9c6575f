/** The tools of the drawing by name, and the one that is in force. */
import type { Tool } from './view.svelte'

export const TOOL_NAMES: Readonly<Record<Tool, string>> = {
  select: 'Select',
  paint: 'Paint',
  turn: 'Rotate',
  mark: 'Mark made',
  move: 'Move',
  line: 'Line',
}

/** The chosen tool where a kind of layout has it, else its first. */
export const toolFor = (tools: readonly [Tool, ...Tool[]], chosen: Tool | null): Tool =>
  chosen && tools.includes(chosen) ? chosen : tools[0]
