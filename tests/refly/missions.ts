import { readFileSync } from 'node:fs';
import { readMission } from '../../src/mission/readCard.ts';
import type { Mission } from '../../src/mission/types.ts';

/** The mission of a reference flight or of a sample flight, by the card's name. */
export function missionOf(name: string, change: (card: Card) => void = () => {}): Mission {
  const sample = /-\d$/.test(name);
  const folder = new URL(sample ? '../../sample-logs/' : '../flights/', import.meta.url);
  const card = JSON.parse(readFileSync(new URL(`${name}.mission.json`, folder), 'utf8')) as Card;
  change(card);
  return readMission({ card: { name: `${name}.mission.json`, text: JSON.stringify(card) } });
}

/** As much of a card as the tests change. */
export interface Card {
  target: Record<string, unknown>;
  limits?: Record<string, unknown>;
  vehicle: { payload_kg: number; stages: Record<string, unknown>[] };
}
