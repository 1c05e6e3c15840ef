// Prints how many tests passed and failed, and fails where none passed.
import { readFileSync } from 'node:fs';

const report = JSON.parse(readFileSync('node_modules/.cache/vitest.json', 'utf8'));
console.log(`${report.numPassedTests} passed, ${report.numFailedTests} failed, ${report.numPendingTests} skipped`);
if (report.numPassedTests === 0 || !report.success) process.exitCode = 1;
