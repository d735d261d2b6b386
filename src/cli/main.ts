import { run } from './run.ts';
import { processTerminal } from './terminal.ts';

// A reader that closes early (`lossbook review … | head`) ends the program without a word.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 3));
process.stderr.on('error', () => undefined);

process.exitCode = await run(process.argv.slice(2), processTerminal());
