/**
 * A webpack loader: leaves out of the functions bundle what only people read of a declaration (its examples,
 * and what it says of a function, a parameter, a choice, a figure, a rule). Excel's runtime shows none of it;
 * the pane, the pages and the metadata read it from the sources. What a finding says stays, but of those that
 * no cell function says.
 */
import ts from 'typescript';

const PROPERTIES = new Set(['examples', 'says']);
/** Which argument of these declaring functions is words. */
const ARGUMENTS = { required: 1, optional: 1, rule: 2, own: 1 };

const isWords = (node) => node !== undefined && ts.isStringLiteralLike(node);

function withoutWords(context) {
  const { factory } = context;
  const visit = (node) => {
    if (ts.isObjectLiteralExpression(node)) {
      const kept = node.properties.filter(
        (one) => !(ts.isPropertyAssignment(one) && PROPERTIES.has(one.name.getText())),
      );
      return ts.visitEachChild(factory.updateObjectLiteralExpression(node, kept), visit, context);
    }
    if (ts.isCallExpression(node) && ts.isIdentifier(node.expression)) {
      const at = ARGUMENTS[node.expression.text];
      if (isWords(node.arguments[at])) {
        const kept = node.arguments.map((one, place) =>
          place === at ? factory.createStringLiteral('') : one,
        );
        const call = factory.updateCallExpression(node, node.expression, node.typeArguments, kept);
        return ts.visitEachChild(call, visit, context);
      }
    }
    return ts.visitEachChild(node, visit, context);
  };
  return (file) => ts.visitNode(file, visit);
}

const transformed = (text, transformer) =>
  ts.transpileModule(text, {
    compilerOptions: { target: 'ES2022', module: 'ESNext', verbatimModuleSyntax: true },
    transformers: { before: [transformer] },
  }).outputText;

export const plain = (text) => transformed(text, withoutWords);

/** A finding that no cell function says is declared with `elsewhere`. */
const isElsewhere = (node) =>
  ts.isPropertyAssignment(node) &&
  ts.isObjectLiteralExpression(node.initializer) &&
  node.initializer.properties.some((one) => one.name?.getText() === 'elsewhere');

function withoutElsewhere(context) {
  const visit = (node) => (isElsewhere(node) ? undefined : ts.visitEachChild(node, visit, context));
  return (file) => ts.visitNode(file, visit);
}

export const findings = (text) => transformed(text, withoutElsewhere);

export default function forPeople(text) {
  if (/[\\/]core[\\/]findings[\\/]/.test(this.resourcePath)) return findings(text);
  return /[\\/]window[\\/]reader[\\/]/.test(this.resourcePath) ? text : plain(text);
}
