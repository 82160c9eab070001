import '../client/language.ts';
import '@fontsource-variable/figtree/index.css';
import './tokens.css';
import './base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { Boundary } from './Boundary.tsx';
import { noteFailure } from '../client/note-failure.ts';
import { refreshAll } from '../client/queries/query-client.ts';
import { showTheme } from '../client/theme.ts';
import { onChangesElsewhere } from '../client/window-open.ts';

showTheme();
// What no room catches: the browser's console has it too, but nobody sees that.
window.addEventListener('error', ({ error }) => error && noteFailure('window', error));
window.addEventListener('unhandledrejection', ({ reason }) => noteFailure('window', reason));
// What another desk booked is read again where it is shown; what is being typed stays.
onChangesElsewhere(() => void refreshAll());
const root = document.getElementById('root');
if (!root) throw new Error('the page has no root');
createRoot(root).render(
  <StrictMode>
    <Boundary place="" isWindow>
      <App />
    </Boundary>
  </StrictMode>,
);
