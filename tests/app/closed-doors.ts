/** The doors that specs go through, and which of them this machine can open. */
import { hasDisplay } from '../../main/launch/browser.mjs';
import { electronProgram } from '../../main/launch/electron-runtime.mjs';

export type Door = 'loopback' | 'electron';

/** Why this machine cannot open the door, or ''. */
export function whyClosed(door: Door): string {
  switch (door) {
    case 'loopback':
      return process.env.BOLT_NO_BROWSER ?? '';
    case 'electron':
      if (electronProgram() === '') return "Electron's runtime is not on this machine";
      return hasDisplay(process.platform, process.env) ? '' : 'there is no display for the Electron window';
    default:
      return door satisfies never;
  }
}
