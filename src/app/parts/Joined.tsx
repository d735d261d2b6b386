import { Fragment } from 'preact';

/** Words joined by ` · `, as a flight's title is: where a line ends, the dot stays with the word before it. */
export function Joined({ text }: { readonly text: string }) {
  const parts = text.split(' · ');
  return (
    <>
      {parts.map((part, i) => {
        if (i === parts.length - 1) return part;
        const last = part.lastIndexOf(' ') + 1;
        return (
          <Fragment key={part}>
            {part.slice(0, last)}
            <span class="kept">{part.slice(last)} ·</span>{' '}
          </Fragment>
        );
      })}
    </>
  );
}
