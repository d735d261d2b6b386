/** This browser's storage for small texts; null where it is forbidden. */
export function browserStorage(): Storage | null {
  try {
    return localStorage;
  } catch {
    return null;
  }
}
