/**
 * A webpack loader: of decimal.js, what money is asked (the members of `Money` in src/core/exact/money.ts)
 * and what these use themselves. The library writes its methods onto one object, which no bundler can tell
 * apart; its sines, logarithms and roots were a tenth of the functions bundle.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

/** From the project's top, as the bundled bench stands beside another folder than this one. */
const MONEY = fileURLToPath(new URL('../../src/core/exact/money.ts', import.meta.url));
/** What the library itself calls for those. */
const BEHIND = ['isFinite', 'isNegative', 'valueOf'];

const parsed = (name, text) => ts.createSourceFile(name, text, ts.ScriptTarget.ES2022, true);

/** What money can do, by its declaration. */
export function operations() {
  const declared = parsed(MONEY, readFileSync(MONEY, 'utf8')).statements.find(
    (one) => ts.isInterfaceDeclaration(one) && one.name.text === 'Money',
  );
  return declared.members.map(({ name }) => name.getText());
}

/** The names in `P.plus = P.add = …`, or undefined for another statement. */
function methodsIn(statement) {
  if (!ts.isExpressionStatement(statement)) return undefined;
  const names = [];
  let { expression } = statement;
  while (ts.isBinaryExpression(expression) && /^P\.\w+$/.test(expression.left.getText())) {
    names.push(expression.left.name.text);
    expression = expression.right;
  }
  return names.length > 0 ? names : undefined;
}

/** Of what stands on the library itself, `Decimal.ROUND_UP = 0`, money names some; it sets itself up by the others. */
const ITSELF = ['prototype', 'config'];
const named = () => [...readFileSync(MONEY, 'utf8').matchAll(/\bDecimal\.(\w+)/g)].map(([, name]) => name);

/** A member that nobody names; and two constants of a thousand digits. */
function isUnasked(statement, asked) {
  const text = statement.getText();
  const [, member] = /^Decimal\.(\w+) = /.exec(text) ?? [];
  return member === undefined ? /^(LN10|PI) = new Decimal\(\1\);/.test(text) : !asked.has(member);
}
const DIGITS = /'\d\.\d{1000,}'/g;

/** Money is decimal: what is written to another base is no figure of it, as any other text is none. */
const REFUSED = 'throw Error(invalidArgument + str);';
const isOtherBase = (node) => ts.isIfStatement(node) && node.expression.getText() === 'isHex.test(str)';
function otherBases(body) {
  const from = body.statements.findIndex(isOtherBase);
  return from < 0 ? [] : body.statements.slice(from);
}

export function moneyAlone(text) {
  const kept = new Set([...operations(), ...BEHIND]);
  const asked = new Set([...named(), ...ITSELF]);
  const isLeftOut = (statement) => {
    const methods = methodsIn(statement);
    return methods === undefined ? isUnasked(statement, asked) : !methods.some((name) => kept.has(name));
  };
  const without = [];
  const visit = (node) => {
    if (ts.isFunctionDeclaration(node) && node.name.text === 'parseOther')
      without.push(...otherBases(node.body));
    else if (ts.isStatement(node) && isLeftOut(node)) without.push(node);
    else ts.forEachChild(node, visit);
  };
  const file = parsed('decimal.mjs', text);
  visit(file);
  return without
    .reduceRight((rest, node) => {
      const instead = isOtherBase(node) ? REFUSED : '';
      return rest.slice(0, node.getStart()) + instead + rest.slice(node.end);
    }, text)
    .replace(DIGITS, "''");
}

export default moneyAlone;
