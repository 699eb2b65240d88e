import type { ComponentChildren, JSX } from 'preact';

type Look = {
  /** `primary`: the one thing to do here. `danger`: takes something away. `quiet`: looks like a link. */
  kind?: 'plain' | 'primary' | 'danger' | 'quiet';
  /** As wide as the screen and high enough for a thumb without looking. */
  large?: boolean;
  children: ComponentChildren;
};
const classes = ({ kind = 'plain', large = false }: Look): string =>
  ['button', `button-${kind}`, ...(large ? ['button-large'] : [])].join(' ');

type ButtonProps = Look &
  Omit<JSX.HTMLAttributes<HTMLButtonElement>, 'size'> & {
    type?: 'button' | 'submit';
    disabled?: boolean;
  };

export function Button({ kind, large, children, type = 'button', ...rest }: ButtonProps) {
  return (
    <button {...rest} type={type} class={classes({ kind, large, children } as Look)}>
      {children}
    </button>
  );
}

/** A link that looks like a button: it leads somewhere, it does nothing. */
export function LinkButton({ href, kind, large, children }: Look & { href: string }) {
  return (
    <a href={href} class={classes({ kind, large, children } as Look)}>
      {children}
    </a>
  );
}
