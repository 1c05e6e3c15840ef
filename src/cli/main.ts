import { runCommandLine } from './command-line.ts';

// A reader that has seen enough, such as head, closes the pipe: nothing more to do.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

process.exitCode = await runCommandLine(process.argv.slice(2));
