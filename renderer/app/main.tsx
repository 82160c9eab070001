import '../client/language.ts';
import '@fontsource-variable/figtree/index.css';
import './tokens.css';
import './base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { Boundary } from './Boundary.tsx';
import { noteFailure } from '../client/note-failure.ts';
import { showTheme } from '../client/theme.ts';

showTheme();
// What no room catches: the browser's console has it too, but nobody sees that.
window.addEventListener('error', ({ error }) => error && noteFailure('window', error));
window.addEventListener('unhandledrejection', ({ reason }) => noteFailure('window', reason));
const root = document.getElementById('root');
if (!root) throw new Error('the page has no root');
createRoot(root).render(
  <StrictMode>
    <Boundary place="" isWindow>
      <App />
    </Boundary>
  </StrictMode>,
);
