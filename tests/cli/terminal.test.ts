import { afterEach, describe, expect, test, vi } from 'vitest';
import { processTerminal } from '../../src/cli/terminal.ts';

afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllEnvs();
  Object.defineProperty(process.stdout, 'isTTY', { value: isTTY, configurable: true });
  Object.defineProperty(process.stdout, 'columns', { value: columns, configurable: true });
});
const { isTTY, columns } = process.stdout;

function onTerminal(width: number | undefined): void {
  Object.defineProperty(process.stdout, 'isTTY', { value: true, configurable: true });
  Object.defineProperty(process.stdout, 'columns', { value: width, configurable: true });
  vi.stubEnv('NO_COLOR', '');
  vi.stubEnv('TERM', 'xterm');
}

describe('the terminal', () => {
  test('is coloured only where it is one, and neither NO_COLOR nor a dumb terminal forbids it', () => {
    onTerminal(80);
    expect(processTerminal().colour).toBe(true);
    vi.stubEnv('NO_COLOR', '1');
    expect(processTerminal().colour).toBe(false);
    vi.stubEnv('NO_COLOR', '');
    vi.stubEnv('TERM', 'dumb');
    expect(processTerminal().colour).toBe(false);
    vi.stubEnv('TERM', 'xterm');
    Object.defineProperty(process.stdout, 'isTTY', { value: false, configurable: true });
    expect(processTerminal().colour).toBe(false);
  });

  test.each([
    [200, 80],
    [64, 64],
    [10, 40],
    [0, 80],
    [undefined, 80],
  ])('of %s columns gets lines of %d', (width, expected) => {
    onTerminal(width);
    expect(processTerminal().width).toBe(expected);
  });

  test('gets notes as single harmless lines on stderr', () => {
    const written = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    processTerminal().note('a\u001b[31m\nb');
    expect(written).toHaveBeenCalledExactlyOnceWith('lossbook: a b\n');
  });
});
