import type { ComponentProps } from 'react';
import style from './Button.module.css';

export interface ButtonProps extends ComponentProps<'button'> {
  /** The one thing to do here is `main`; all else is `plain`, or `quiet` beside text. */
  readonly look?: 'main' | 'plain' | 'quiet';
}

export function Button({ look = 'plain', type = 'button', className, ...rest }: ButtonProps) {
  return (
    <button type={type} className={`${style.button} ${style[look]} eased ${className ?? ''}`} {...rest} />
  );
}
