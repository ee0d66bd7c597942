import './preview.css';
import type { PreviewMessage } from './message.js';
import { render } from './render.js';

/** Handed to the page by the editor. */
declare function acquireVsCodeApi(): { postMessage(message: unknown): void };

const page = document.querySelector('main');

window.addEventListener('message', (event: MessageEvent<PreviewMessage>) => {
  page?.replaceChildren(...render(event.data));
  page?.setAttribute('aria-busy', 'false');
});
acquireVsCodeApi().postMessage('ready');
