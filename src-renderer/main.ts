/** Starts the window: asks the host for the project of this window, then shows it. */
import { mount } from 'svelte'
import App from './App.svelte'
import './style/base.css'

const target = document.getElementById('app')
if (!target) throw new Error('the page has no place for the window')

mount(App, { target, props: { bridge: window.petalyard } })
