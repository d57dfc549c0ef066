/** The engine's parts that we speak to, and the two places where an exception would hang it. */
import type {
  IDefinedNamesService,
  IFunctionService,
  ICalculateFormulaService,
  IFormulaRuntimeService,
  FormulaCurrentConfigService,
  FormulaDataModel,
  Interpreter,
  LexerTreeBuilder,
} from '@univerjs/engine-formula';
import type { Library } from './library';

export type Univer = InstanceType<Library['core']['Univer']>;

export interface Parts {
  readonly names: IDefinedNamesService;
  readonly functions: IFunctionService;
  readonly calculation: ICalculateFormulaService;
  readonly runtime: IFormulaRuntimeService;
  readonly current: FormulaCurrentConfigService;
  readonly model: FormulaDataModel;
  readonly interpreter: Interpreter;
  readonly reader: LexerTreeBuilder;
}

export function partsOf(univer: Univer, { formula }: Library): Parts {
  const get = <T>(identifier: unknown): T => univer.__getInjector().get(identifier as never) as T;
  return {
    names: get(formula.IDefinedNamesService),
    functions: get(formula.IFunctionService),
    calculation: get(formula.ICalculateFormulaService),
    runtime: get(formula.IFormulaRuntimeService),
    current: get(formula.IFormulaCurrentConfigService),
    model: get(formula.FormulaDataModel),
    interpreter: get(formula.Interpreter),
    reader: get(formula.LexerTreeBuilder),
  };
}

/** A formula that cannot be read becomes #VALUE! where it would have hung the calculation for good. */
export function guardReading(univer: Univer, { formula }: Library): void {
  const injector = univer.__getInjector();
  const lexer = injector.get(formula.Lexer);
  const parser = injector.get(formula.AstTreeBuilder);
  const tree = lexer.treeBuilder.bind(lexer);
  const parse = parser.parse.bind(parser);
  lexer.treeBuilder = (text, suffix) => {
    try {
      return tree(text, suffix);
    } catch {
      return formula.ErrorType.VALUE;
    }
  };
  parser.parse = (node) => {
    try {
      return parse(node);
    } catch {
      return parse(tree('=#VALUE!') as Parameters<typeof parse>[0]);
    }
  };
}
