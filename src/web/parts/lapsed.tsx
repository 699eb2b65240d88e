import { frameWords } from '../words/frame.ts';
import { LinkButton } from './button.tsx';
import { Notice } from './notice.tsx';

/** The sign-in has run out, and the way to a new one; it leads back here. */
export function Lapsed({ text, announce = false }: { text: string; announce?: boolean }) {
  return (
    <Notice tone="caution" announce={announce}>
      <span>{text}</span>
      <div>
        <LinkButton href="/app/sign-in" kind="primary">
          {frameWords().signInAgain}
        </LinkButton>
      </div>
    </Notice>
  );
}
