import '@fontsource-variable/figtree/index.css';
import './tokens.css';
import './base.css';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { Boundary } from './Boundary.tsx';
import { showTheme } from '../client/theme.ts';

showTheme();
const root = document.getElementById('root');
if (!root) throw new Error('the page has no root');
createRoot(root).render(
  <Boundary place="" isWindow>
    <App />
  </Boundary>,
);
