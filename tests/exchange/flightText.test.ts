import { describe, expect, test } from 'vitest';
import { burnsText, eventsText, findingsText, orbitText } from '../../src/exchange/flightText.ts';
import { inks } from '../../src/exchange/inks.ts';
import { handMadeReview } from './handMadeReview.ts';

const ink = inks(false);
const review = handMadeReview();

describe('tables of the flight', () => {
  test('a burn after the ascent is marked, its missing efficiency a dash', () => {
    expect(burnsText(review.burns, ink)[2]).toMatch(/^upper \(after the ascent\) .* — +90$/);
  });
  test('altitudes of the orbit are in km with their interval', () => {
    expect(orbitText(review.orbit.atCutoff, ink, 80)[0]).toMatch(/^apoapsis +171\.2 +km +±0\.3 +derived$/);
  });
  test('planned times have a column only where there is a plan', () => {
    expect(eventsText(review.events, ink)[0]).not.toContain('planned');
    const planned = review.events.map((e) => ({ ...e, planned_s: e.time_s + 1 }));
    expect(eventsText(planned, ink)[2]).toMatch(/^167\.6 +168\.6 +separation +lower +83\.5 +1,890$/);
  });
  test('a finding has its stretch, cost and worth', () => {
    expect(findingsText(review.findings, ink, 80)[1]).toBe('   14–168 s, 310 m/s ±20, 800 kg of propellant');
  });
  test('nothing is written of what is not there', () => {
    const moment = { ...review.findings[0]!, start_s: 447.7, end_s: 448.3 };
    expect(findingsText([moment], ink, 80)[1]).toMatch(/^ {3}448 s, /);
    expect([burnsText([], ink), eventsText([], ink), findingsText([], ink, 80)]).toEqual([[], [], []]);
  });
});
