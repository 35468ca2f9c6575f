import type { Plugin } from 'vite'

export function phoneScript(): Plugin
