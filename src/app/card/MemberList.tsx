import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { isObject, type Json, type JsonObject, listAt, moved, type Path } from './cardDraft.ts';
import { card, setValue } from './cardState.ts';

interface Props {
  readonly at: Path;
  /** `Stage`, `Booster`: what a member is called. */
  readonly word: string;
  readonly fresh: JsonObject;
  /** True where the order of the members means something. */
  readonly ordered?: boolean;
  /** A line in place of members while there is none. */
  readonly none?: string;
  readonly children: (at: Path, index: number) => ComponentChildren;
}

function nameOf(member: Json, word: string, index: number): string {
  const name = isObject(member) ? member.name : undefined;
  return typeof name === 'string' && name !== '' ? `${word} ${index + 1}, ${name}` : `${word} ${index + 1}`;
}

/** Members of a list in the card, that can be added, taken out and put in another order. */
export function MemberList({ at, word, fresh, ordered = false, none, children }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const members = listAt(card.value, at);
  const small = word.toLowerCase();
  // The reader stays at what was moved or added, or at the button that adds.
  const focus = (selector: string) =>
    requestAnimationFrame(() => box.current?.querySelector<HTMLElement>(selector)?.focus());
  const move = (index: number, step: -1 | 1) => {
    setValue(at, moved(members, index, step));
    const to = index + step;
    const last = step === -1 ? to === 0 : to === members.length - 1;
    const wanted = last ? -step : step;
    focus(`:scope > [data-member="${to}"] [data-step="${wanted}"]`);
  };
  return (
    <div class="members" ref={box}>
      {members.length === 0 && none !== undefined ? <p class="quiet">{none}</p> : null}
      {members.map((member, i) => (
        <fieldset key={i} class="member" data-member={i}>
          <legend>{nameOf(member, word, i)}</legend>
          <div class="member-actions">
            {ordered && members.length > 1 ? (
              <>
                <button
                  type="button"
                  class="plain"
                  data-step="-1"
                  disabled={i === 0}
                  onClick={() => move(i, -1)}
                >
                  Earlier<span class="unseen"> {nameOf(member, word, i)}</span>
                </button>
                <button
                  type="button"
                  class="plain"
                  data-step="1"
                  disabled={i === members.length - 1}
                  onClick={() => move(i, 1)}
                >
                  Later<span class="unseen"> {nameOf(member, word, i)}</span>
                </button>
              </>
            ) : null}
            <button
              type="button"
              class="plain"
              onClick={() => {
                const rest = members.filter((_, k) => k !== i);
                setValue(at, rest.length === 0 ? undefined : rest);
                focus(':scope > .add');
              }}
            >
              Remove<span class="unseen"> {nameOf(member, word, i)}</span>
            </button>
          </div>
          {children([...at, i], i)}
        </fieldset>
      ))}
      <button
        type="button"
        class="plain strong add"
        onClick={() => {
          setValue(at, [...members, fresh]);
          focus(`:scope > [data-member="${members.length}"] input`);
        }}
      >
        Add {/^[aeiou]/.test(small) ? 'an' : 'a'} {small}
      </button>
    </div>
  );
}
