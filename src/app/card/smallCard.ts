import { cardOf, cardText, isObject, type Json, type JsonObject, valueAt, withValue } from './cardDraft.ts';

/** What can be chosen for a flight whose card says nothing but where and how high. */
export interface SmallCard {
  /** Name of a world; null where none is said. */
  readonly world: string | null;
  /** Altitude of a circular target orbit, m; null where none is said. */
  readonly targetAltitude_m: number | null;
}

/** World and target of a card that says nothing else; null for any other card. No card at all says neither. */
export function smallCard(text: string | null): SmallCard | null {
  const card: JsonObject | null = text === null ? {} : cardOf(text);
  if (card === null || Object.keys(card).some((key) => key !== 'world' && key !== 'target')) return null;
  const world: Json | undefined = card.world;
  const high = valueAt(card, ['target', 'apoapsisAltitude_m']);
  const low = valueAt(card, ['target', 'periapsisAltitude_m']);
  const circular = high === low && (high === undefined || typeof high === 'number');
  const others = isObject(card.target) ? Object.keys(card.target).length : 0;
  if (!circular || (high !== undefined && others !== 3) || (high === undefined && others > 0)) return null;
  if (world !== undefined && typeof world !== 'string') return null;
  return { world: world ?? null, targetAltitude_m: typeof high === 'number' ? high : null };
}

/** The card that says these and nothing else; null where neither is said. */
export function smallCardText({ world, targetAltitude_m }: SmallCard): string | null {
  let card: JsonObject = {};
  if (world !== null) card = withValue(card, ['world'], world);
  if (targetAltitude_m !== null) {
    card = withValue(card, ['target'], {
      kind: 'orbit',
      apoapsisAltitude_m: targetAltitude_m,
      periapsisAltitude_m: targetAltitude_m,
    });
  }
  return Object.keys(card).length === 0 ? null : cardText(card);
}
