/**
 * Speed at which drag carries the weight: √(2mg/(ρ·CdA)), m/s.
 *
 * @param mass_kg of all that hangs
 * @param gravity_m_s2 where it falls
 * @param density_kg_m3 of the air there
 * @param dragArea_m2 drag coefficient times area of all that brakes
 */
export function terminalSpeed_m_s(
  mass_kg: number,
  gravity_m_s2: number,
  density_kg_m3: number,
  dragArea_m2: number,
): number {
  return Math.sqrt((2 * mass_kg * gravity_m_s2) / (density_kg_m3 * dragArea_m2));
}
