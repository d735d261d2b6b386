import { useLayoutEffect, useState } from 'preact/hooks';

const waiting: (() => void)[] = [];
let going = false;

/** One at a time, each in a task of its own, so that the page answers in between. */
function next(): void {
  const turn = waiting.shift();
  going = turn !== undefined;
  if (turn === undefined) return;
  turn();
  setTimeout(next);
}

/**
 * False until it is this component's turn: the screen is drawn part by part, and a long log chart by chart. Where it is
 * not `long`, at once.
 * @param wanted a turn is not asked for before it is true
 */
export function useTurn(long: boolean, wanted = true): boolean {
  const [come, setCome] = useState(!long);
  useLayoutEffect(() => {
    if (come || !wanted) return;
    const turn = () => setCome(true);
    waiting.push(turn);
    if (!going) {
      going = true;
      setTimeout(next);
    }
    return () => {
      const place = waiting.indexOf(turn);
      if (place >= 0) waiting.splice(place, 1);
    };
  }, [come, wanted]);
  return come;
}
