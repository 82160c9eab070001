/** Time for each lay: at first sight, and when it is looked for in earnest. */
export const quickSeconds = 0.3;
export { thoroughSeconds } from '../../../shared-core/lay/still-falls/still-falls.ts';
