import { findUnit, type Unit } from '../units/units.ts';
import { headerParts } from './headerWords.ts';
import { quantityOf } from './quantities.ts';
import { type ChannelName, channelNames } from './types.ts';
import { blockingWords, noiseWords, phrases, plainWords, weakeningWords } from './vocabulary.ts';

/** A channel that a header may name. */
export interface ChannelMatch {
  readonly channel: ChannelName;
  readonly confidence: number;
  readonly unit: Unit | null;
  readonly unitFrom: 'header' | 'units-row' | null;
  /** The words that decided. */
  readonly words: readonly string[];
}

const NAMED_IN_WORDS = 0.95;
/** A second speed beside one over the ground may be inertial; its start must prove it. */
export const SECOND_SPEED = 0.4;
const NAMED_BY_A_LETTER = 0.65;

const wordSets = channelNames.flatMap((channel) =>
  phrases[channel].map((phrase) => ({ channel, words: new Set(phrase.split(' ')) })),
);
const vocabulary = new Set(wordSets.flatMap(({ words }) => [...words]));

/** Capital letters that mean something else than the small one. */
const capitalMeanings: Readonly<Record<string, string>> = { M: 'mach', T: 'thrust', F: 'thrust', D: 'drag' };

/** How well words name a channel: 0 when they do not. */
function wordConfidence(words: readonly string[], wanted: ReadonlySet<string>): number {
  const left: string[] = [];
  const met = new Set<string>();
  let longest = 0;
  for (const word of words) {
    const plain = plainWords.get(word) ?? word;
    if (wanted.has(plain)) {
      // A word may come twice (`alt_msl`), a doubled letter not.
      met.add(plain);
      longest = Math.max(longest, word.length);
    } else left.push(word);
  }
  if (met.size < wanted.size) return 0;
  let confidence =
    longest > 1 || words.some((word) => word.codePointAt(0)! > 127) ? NAMED_IN_WORDS : NAMED_BY_A_LETTER;
  for (const word of left) {
    const plain = plainWords.get(word) ?? word;
    if (blockingWords.has(word)) return 0;
    if (noiseWords.has(word)) confidence -= 0.01;
    else if (weakeningWords.has(word)) confidence -= 0.15;
    else if (vocabulary.has(plain)) return 0;
    else if (/^\d+$/u.test(word)) confidence -= 0.1;
    else confidence -= 0.2;
  }
  return Math.max(0, confidence);
}

/**
 * The channels that a header may name, each with the unit that header or units row gives. Every way to part
 * words from a unit is tried; a way whose tail is a unit of the channel's quantity wins over one without.
 */
export function channelMatches(header: string, unitsCell: string | null): ChannelMatch[] {
  const best = new Map<ChannelName, ChannelMatch>();
  // `state.velocity.speed_m_s`: the whole path first, then what is left without its outer names.
  const path = /^[^\s.]+(?:\.[^\s.]+)+$/u.test(header) ? header.split('.') : [header];
  path.forEach((_, k) => {
    collect(path.slice(k).join('.'), 0.03 * k, best);
  });
  if (/^[MTFD]$/u.test(header.trim())) preferCapital(header.trim(), best);
  const speed = best.get('speed');
  if (speed !== undefined && !best.has('inertialSpeed') && speed.words.length <= 1) {
    best.set('inertialSpeed', { ...speed, channel: 'inertialSpeed', confidence: SECOND_SPEED });
  }
  return withUnitsCell([...best.values()], unitsCell);
}

/** The channels that one way of writing the header may name, put where they are better than what is known. */
function collect(header: string, penalty: number, best: Map<ChannelName, ChannelMatch>): void {
  for (const { words, unit: spellings } of headerParts(header)) {
    for (const { channel, words: wanted } of wordSets) {
      const confidence = wordConfidence(words, wanted);
      if (confidence <= 0.2) continue;
      const specific = wanted.size > 1 ? 0.01 : 0;
      const quantity = quantityOf[channel];
      const unit =
        spellings.map((spelling) => findUnit(quantity, spelling)).find((found) => found !== null) ?? null;
      if (spellings.length > 0 && unit === null) continue;
      const match: ChannelMatch = {
        channel,
        confidence: confidence + specific - penalty,
        unit,
        unitFrom: unit === null ? null : 'header',
        words,
      };
      const known = best.get(channel);
      if (known === undefined || rank(match) > rank(known)) best.set(channel, match);
    }
  }
}

function withUnitsCell(matches: readonly ChannelMatch[], unitsCell: string | null): ChannelMatch[] {
  if (unitsCell === null) return [...matches];
  return matches.flatMap((match) => {
    const unit = findUnit(quantityOf[match.channel], unitsCell);
    if (unit !== null) return [{ ...match, unit, unitFrom: 'units-row' as const }];
    // A units cell that is a unit of something else speaks against the channel.
    return match.unit !== null || !/\p{L}/u.test(unitsCell)
      ? [match]
      : [{ ...match, confidence: match.confidence - 0.4 }];
  });
}

function rank(match: ChannelMatch): number {
  return match.confidence + (match.unit === null ? 0 : 0.1);
}

function preferCapital(letter: string, best: Map<ChannelName, ChannelMatch>): void {
  const meant = capitalMeanings[letter] as ChannelName | undefined;
  if (meant === undefined) return;
  for (const [channel, match] of best) best.set(channel, { ...match, confidence: match.confidence - 0.3 });
  best.set(meant, { channel: meant, confidence: 0.5, unit: null, unitFrom: null, words: [letter] });
}
