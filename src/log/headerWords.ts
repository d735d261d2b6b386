import type { Quantity } from '../units/quantity.ts';
import { findUnit } from '../units/units.ts';
import { plainWords } from './vocabulary.ts';

/** A header taken apart: each way to part words from a unit, the most telling first. */
export interface HeaderParts {
  /** Lower-case words, as written. */
  readonly words: readonly string[];
  /** What may be a unit, in the spellings to try; empty where this way takes everything as words. */
  readonly unit: readonly string[];
}

const LONGEST_HEADER = 200;

/** Control signs, escapes and markup brackets never reach the words. */
function cleaned(header: string): string {
  return header
    .slice(0, LONGEST_HEADER)
    .normalize('NFKC')
    .replace(/<\/?[a-z][^<>]*>/giu, ' ')
    .replace(/\p{Cc}\[[0-9;?]*[a-z]/giu, ' ')
    .replace(/\p{Cc}|\p{Cf}/gu, ' ');
}

interface Token {
  readonly text: string;
  /** Where the token begins in the cleaned header. */
  readonly at: number;
}

/** Words of a header: parted at every sign that is no letter or digit, at humps (`altitudeKm`) and inside known compounds. */
function tokensOf(text: string): Token[] {
  const tokens: Token[] = [];
  for (const match of text.matchAll(/[\p{L}\p{M}\p{N}%°#‰]+/gu)) {
    if (plainWords.has(match[0].toLowerCase())) {
      tokens.push({ text: match[0], at: match.index });
      continue;
    }
    for (const hump of match[0].matchAll(
      /[\p{Lu}]+(?![\p{Ll}])[\p{N}%]*|\p{Lu}?[\p{Ll}\p{Lo}\p{M}]+[\p{N}%]*|[^\p{Lu}\p{Ll}\p{Lo}]+/gu,
    )) {
      for (const part of compoundParts(hump[0]))
        tokens.push({ text: part.text, at: match.index + hump.index + part.at });
    }
  }
  return tokens;
}

/** `verticalspeed` → vertical, speed; `altkm` → alt, km. Words of the vocabulary stay whole. */
function compoundParts(token: string): Token[] {
  const lower = token.toLowerCase();
  if (lower.length < 5 || plainWords.has(lower)) return [{ text: token, at: 0 }];
  for (let end = lower.length - 1; end >= 3; end--) {
    if (!plainWords.has(lower.slice(0, end))) continue;
    const rest = token.slice(end);
    const restParts = compoundParts(rest);
    const known = restParts.every((part) => plainWords.has(part.text.toLowerCase()));
    if (known || isSomeUnit(rest)) {
      return [
        { text: token.slice(0, end), at: 0 },
        ...restParts.map((part) => ({ text: part.text, at: part.at + end })),
      ];
    }
  }
  return [{ text: token, at: 0 }];
}

const unitQuantities: readonly Quantity[] = [
  'time',
  'length',
  'speed',
  'angle',
  'mass',
  'force',
  'pressure',
  'acceleration',
  'temperature',
];

function isSomeUnit(spelling: string): boolean {
  return spelling.length >= 2 && unitQuantities.some((quantity) => findUnit(quantity, spelling) !== null);
}

/** Units in Cyrillic letters: км, м/с, км/ч, кг, кН, кПа, с. */
const latinLetters: Readonly<Record<string, string>> = {
  к: 'k',
  м: 'm',
  с: 's',
  ч: 'h',
  г: 'g',
  Н: 'N',
  П: 'P',
  а: 'a',
  т: 't',
};

/** Spellings under which the end of a header may be a unit: `m_s` is `m/s`, `m_s_2` is `m/s2`. */
function unitSpellingsOf(tail: string): string[] {
  const bare = tail.replace(/^[\s_.:,;|=/-]+|[\s_.:,;|=/-]+$/gu, '');
  const joined = bare.replace(/[_.\s-](?=\d)/gu, '');
  return [
    ...new Set([
      ...(/^[А-яё/²2]+$/u.test(bare)
        ? [[...bare].map((letter) => latinLetters[letter] ?? letter).join('')]
        : []),
      bare,
      joined,
      joined.replace(/[_.\s-]+(?:per|p)[_.\s-]+/iu, '/'),
      joined.replace(/[_.\s-]+/u, '/'),
      joined.replace(/[_.\s-]+/gu, '/'),
      joined.replace(/[_.\s-]+/gu, ''),
      joined.replace(/[_.-]+/gu, ' '),
    ]),
  ].filter((spelling) => spelling !== '');
}

/** The ways to read a header as words and a unit: a bracketed unit first, then ever shorter tails, then none. */
export function headerParts(header: string): HeaderParts[] {
  const text = cleaned(header).replace(/\s+/gu, ' ').trim();
  const ways: HeaderParts[] = [];
  const lower = (tokens: readonly Token[]): string[] => tokens.map((token) => token.text.toLowerCase());
  for (const bracket of [...text.matchAll(/[[({<]([^[\](){}<>]*)[\])}>]/gu)].reverse()) {
    const without = `${text.slice(0, bracket.index)} ${text.slice(bracket.index + bracket[0].length)}`;
    ways.push({ words: lower(tokensOf(without)), unit: unitSpellingsOf(bracket[1] ?? '') });
  }
  const tokens = tokensOf(text);
  for (let k = 1; k < tokens.length; k++) {
    const tail = text.slice(tokens[k]?.at ?? 0);
    if (tail.length <= 20) ways.push({ words: lower(tokens.slice(0, k)), unit: unitSpellingsOf(tail) });
  }
  ways.push({ words: lower(tokens), unit: [] });
  return ways;
}
