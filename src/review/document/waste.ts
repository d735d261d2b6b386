import type { Figure } from './figure.ts';

/** Causes of the projected total's rise (METHODS §5); these are not the ledger's entries. */
export type WasteCauseName = 'backPressure' | 'drag' | 'offDirection' | 'offTime' | 'drift';

/** Where the margin went, moment by moment: the projected total's rise split with the primer vector. */
export interface ReviewWaste {
  /** Running sums from lift-off in m/s on nodes of their own; `remainder` is what the quadrature leaves over. */
  readonly curves: Readonly<Record<WasteCauseName | 'total' | 'remainder', readonly number[]>> & {
    readonly time_s: readonly number[];
  };
  /** Mean rate in m/s² over the stretch that ends at each node; the first is 0. */
  readonly rates: Readonly<Record<WasteCauseName | 'total', readonly number[]>>;
  /** At the end of the ascent; kilograms at the masses at which the waste arose. */
  readonly totals: Readonly<
    Record<
      WasteCauseName | 'total' | 'remainder',
      { readonly deltaV_m_s: Figure; readonly propellant_kg: Figure }
    >
  >;
}
