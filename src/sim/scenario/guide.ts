import { figure, unitSymbols } from '../units.ts';
import { LOOP_PARTS } from './config/loop.ts';
import { alternatives, capitalised } from './issue.ts';
import { parameterGroups } from './parameter-groups.ts';
import { rangeOf } from './read-value.ts';
import { FORMAT, VERSION } from './shape.ts';
import { isNumberRow, isRequired, isWordRow, type Parameter } from './table.ts';

function defaultOf(row: Parameter): string {
  if (isRequired(row)) return 'required';
  if (row.absent !== undefined) return row.absent;
  return String(row.default);
}

function rangeText(row: Parameter): string {
  if (isWordRow(row)) return row.choices.join(', ');
  if (!isNumberRow(row)) return 'text';
  return `${row.whole ? 'whole, ' : ''}${rangeOf({ ...row, unit: '-' })}${row.ramp ? ', or a pair' : ''}`;
}

const unitText = (row: Parameter): string => (isNumberRow(row) ? row.unit : '');
const sourceText = (row: Parameter): string => row.source ?? (isRequired(row) ? 'required' : 'none of its own');

/** Every key with unit, default, range and meaning as lines of plain text, for the command line. */
export function describeParameters(): string {
  return parameterGroups()
    .map(({ title, places, rows }) => {
      const table = rows.map(({ key, row }) => [key, unitText(row), defaultOf(row), rangeText(row), row.meaning]);
      const widths = [0, 1, 2, 3].map((column) => Math.max(...table.map((cells) => cells[column].length)));
      const lines = table.map(
        (cells) => `  ${cells.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  ')}`,
      );
      return [`${capitalised(title)}: ${places.map((place) => place || 'the file').join(', ')}`, ...lines].join('\n');
    })
    .join('\n\n');
}

/** The guide to the keys of a scenario file, in Markdown. */
export function scenarioGuide(): string {
  const sections = parameterGroups().map(({ title, places, rows }) => {
    const where = places.map((place) => (place === '' ? 'the file itself' : `\`${place}\``)).join(', ');
    const body = rows.map(({ key, row }) => {
      const usual = isNumberRow(row) && row.usual ? `${figure(row.usual[0])} to ${figure(row.usual[1])}` : '';
      return [`\`${key}\``, unitText(row), rangeText(row), usual, defaultOf(row), row.meaning, sourceText(row)];
    });
    return [`## ${capitalised(title)}`, '', `In ${where}.`, '', ...alignedTable([HEAD, ...body])].join('\n');
  });
  return `${[INTRODUCTION, ...sections].join('\n\n')}\n`;
}

const HEAD = ['key', 'unit', 'range', 'usual', 'default', 'meaning', 'source of the default'];

/** A Markdown table whose columns line up, the first row as its head. */
function alignedTable([head, ...body]: readonly (readonly string[])[]): string[] {
  const widths = head.map((_, column) => Math.max(3, ...[head, ...body].map((cells) => cells[column].length)));
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell, column) => cell.padEnd(widths[column])).join(' | ')} |`;
  return [line(head), line(widths.map((width) => '-'.repeat(width))), ...body.map(line)];
}

const INTRODUCTION = `# Scenario files

Written from the parameter table by \`npm run generate\`; do not edit.

A scenario is one JSON file: the car, the coolant loop, what is driven, the variants to compare and the upgrades to weigh. All
data in the files here are invented, chosen to be consistent with one another.

\`\`\`json
{ "format": "${FORMAT}", "version": ${VERSION}, "name": "...", "core": { "airConductance": 390, ... }, ..., "cycle": [...], "variants": [...], "upgrades": [...] }
\`\`\`

- **Units.** A bare number is in the unit of its key, below. A text may carry another: \`"14 psi"\`, \`"3/4 in"\`,
  \`"9 gpm"\`, \`"95 degF"\`, \`"2,5 kPa"\`. A comma is a decimal comma; \`"1,234.5"\` is refused.
  Units by quantity: ${[...new Set(unitLists())].join('; ')}.
- **Range.** Outside it a file is refused. Outside "usual" it runs with a warning. Nothing is ever clamped.
- **Loop.** \`loop\` lists the parts in flow order: ${LOOP_PARTS.join(', ')}. Two ways between which the coolant
  divides stand as a list of two: \`["pump", "core", ["exchanger", "secondExchanger"], "reservoir"]\`. Without it:
  pump, core, exchanger where there is one, reservoir.
- **Lines.** One after each part of the loop, and \`afterWays\`, \`afterSecondWays\` where two ways have come together: one segment \`{ "length": 1.4 }\`, a list of them in flow order, or
  \`[]\` where the part is bolted to the next.
- **Test point.** \`core.test\` and \`exchanger.test\` stand for the conductances of the part and their flows: those may then
  be left out. They follow by cross-flow, both fluids unmixed.
- **Cycle.** A list of phases. One item may be \`{ "repeat": 8, "phases": [...] }\`.
- **Pairs.** \`"engineSpeed": [2500, 6600]\` runs linearly from the first to the second value through the phase.
- **Variants.** \`{ "name": "bigger core", "basedOn": "...", "changes": { "core.airConductance": 585, "cycle.1.phases.1.duration": "240 s" } }\`:
  paths of the file with their new values; list items count from 0. The changes of the variant it is based on come first.
- **Upgrades.** \`{ "name": "pump", "price": 380, "hours": 2, "changes": { "pump.freeFlow": 60 } }\`: steps of a build, weighed alone, in the
  order of the list, and in every order by \`soakbench upgrades\`. Each changes the file itself; where two that are fitted change the
  same key, the later in the list counts.

\`scenario.schema.json\` says the same to an editor.`;

function unitLists(): string[] {
  return parameterGroups()
    .flatMap(({ rows }) => rows.map(({ row }) => row))
    .filter(isNumberRow)
    .map(({ unit }) => unitSymbols(unit))
    .filter((symbols) => symbols.length > 1)
    .map((symbols) => alternatives(symbols));
}
