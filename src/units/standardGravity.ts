/** Standard gravity, exact (3rd General Conference on Weights and Measures, 1901; NIST SP 811). */
export const STANDARD_GRAVITY_M_S2 = 9.80665;
