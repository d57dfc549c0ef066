/** npm run hem -- rules: the house rules, each with its default, what it takes, its words and its source. */
import { nearestRule, RULE_LINES, ruleLine, type RuleLine } from '../core/house/rules';
import { CENTIMETRES, INCHES, type Unit } from '../core/exact/unit';
import { readWords, type Command } from './command';
import { FINE, Problem, USAGE } from './problem';

const HELP = `npm run hem -- rules [options] [NAME…]

Lists the house rules. A range of two columns, rule and value, overrides them by name:
it is the last word of most HEM functions, and a workbook keeps it on a sheet of its own.

  npm run hem -- rules
  npm run hem -- rules "side hem" "widths rounding"

  --metric  defaults in centimetres and metres
  --json    the same as a JSON array
  --help    this

Exit code: 0 fine · 2 no such rule, or not used so`;

function standardOf(line: RuleLine, unit: Unit): string | number {
  if (line.key === 'unit') return unit.name;
  const value = line.standard(unit);
  if (value === undefined) return '';
  const cell = line.kind.write?.(value, unit) ?? String(value);
  return typeof cell === 'boolean' ? String(cell) : cell;
}

export const command: Command = {
  help: HELP,
  run(words, io) {
    const { values, positionals } = readWords(
      words,
      { json: { type: 'boolean' }, metric: { type: 'boolean' } },
      'rules',
    );
    const unit = values.metric === true ? CENTIMETRES : INCHES;
    const chosen = positionals.map((name) => {
      const line = ruleLine(name);
      if (line === undefined)
        throw new Problem(`There is no house rule “${name}”. The nearest is “${nearestRule(name)}”.`, USAGE);
      return line;
    });
    const lines = chosen.length === 0 ? RULE_LINES : chosen;
    if (values.json === true) {
      const data = lines.map((line) => ({
        rule: line.name,
        part: line.part,
        standard: standardOf(line, unit),
        takes: line.kind.noun,
        ...(line.kind.choices && { choices: line.kind.choices.map(({ word }) => word) }),
        says: line.says,
        source: line.source,
      }));
      io.out(JSON.stringify(data, null, 2));
      return Promise.resolve(FINE);
    }
    let part = '';
    for (const line of lines) {
      if (line.part !== part) io.out(`${part === '' ? '' : '\n'}${line.part}`);
      part = line.part;
      const standard = standardOf(line, unit);
      io.out(`  ${line.name.padEnd(28)} ${standard === '' ? 'not set' : standard}`);
      io.out(`      ${line.says} (${line.source})`);
      if (line.kind.choices) io.out(`      one of: ${line.kind.choices.map(({ word }) => word).join(', ')}`);
    }
    return Promise.resolve(FINE);
  },
};
