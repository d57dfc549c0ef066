/** Carries out one request of the client: its object paths and its actions, in order, with no way back. */
import { ExcelError, isThing, itemNotFound, NotInStandIn, thing, type Thing } from './kind';
import { SERVICES } from './kinds/services';
import { WORKBOOK } from './kinds/workbook';
import type { World } from './world';

interface Arguments {
  readonly Arguments?: readonly unknown[];
  readonly ReferencedObjectPathIds?: readonly unknown[];
}

interface Query {
  readonly Select?: readonly string[];
  readonly Expand?: readonly string[];
  readonly Top?: number;
  readonly Skip?: number;
}

export interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: Arguments;
  readonly QueryInfo?: Query;
}

export interface Path {
  readonly Id: number;
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: Arguments;
}

export interface Request {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, Path>>;
}

export interface Response {
  readonly Results: { ActionId: number; Value: unknown }[];
  Error?: { Code: string; Message: string; Location: string; ActionIndex: number; HttpStatusCode: number };
}

const ACTION = { instantiate: 1, load: 2, method: 3, set: 4, trace: 5, queryAsJson: 7, update: 9 };
const PATH = { root: 1, made: 2, method: 3, property: 4, indexer: 5, reference: 6, nothing: 7 };

const pascal = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);

/** What the client reads under one name and sets under another. Source: office.js 1.1.110, `Worksheet_ShowGridlines_Set`. */
const SET_AS: Readonly<Record<string, string>> = {
  'Worksheet.Gridlines': 'ShowGridlines',
  'Worksheet.Headings': 'ShowHeadings',
};

export class Interpreter {
  constructor(readonly world: World) {}

  async run(request: Request): Promise<Response> {
    const response: Response = { Results: [] };
    const reached = new Map<number, Thing | null>();
    for (const [index, action] of request.Actions.entries()) {
      try {
        if (action.ActionType === ACTION.load || action.ActionType === ACTION.queryAsJson)
          await this.calculate();
        const Value = await this.act(action, request, reached);
        response.Results.push({ ActionId: action.Id, Value });
      } catch (thrown) {
        if (!(thrown instanceof ExcelError)) throw thrown;
        response.Error = {
          Code: thrown.code,
          Message: thrown.message,
          Location: `${this.kindAt(action.ObjectPathId, reached)}.${action.Name}`,
          ActionIndex: index,
          HttpStatusCode: thrown.status,
        };
        break;
      }
    }
    this.world.suspended = false;
    await this.calculate();
    return response;
  }

  private async calculate(): Promise<void> {
    const { world } = this;
    if (!world.dirty || world.suspended || world.book.calculationMode === 'Manual') return;
    world.dirty = false;
    await world.calculator(world);
  }

  private kindAt(pathId: number, reached: ReadonlyMap<number, Thing | null>): string {
    return reached.get(pathId)?.kind.name ?? 'Workbook';
  }

  private act(action: Action, request: Request, reached: Map<number, Thing | null>): unknown {
    if (action.ActionType === ACTION.trace) return null;
    const target = this.reach(action.ObjectPathId, request, reached);
    switch (action.ActionType) {
      case ACTION.instantiate:
        return target === null ? null : this.identify(target);
      case ACTION.load:
        return target === null ? null : this.load(target, action.QueryInfo ?? {});
      case ACTION.method: {
        if (target === null && action.Name === '_KeepReference') return null;
        if (target === null) throw itemNotFound();
        const given = this.call(target, action.Name, this.arguments(action.ArgumentInfo, request, reached));
        return given === undefined ? null : isThing(given) ? this.identify(given) : given;
      }
      case ACTION.set:
        if (target === null) throw itemNotFound();
        this.set(target, action.Name, this.arguments(action.ArgumentInfo, request, reached)[0]);
        return null;
      case ACTION.update:
        if (target === null) throw itemNotFound();
        this.update(target, this.arguments(action.ArgumentInfo, request, reached)[0]);
        return null;
      default:
        throw new NotInStandIn(`action type ${String(action.ActionType)} (${action.Name})`);
    }
  }

  private reach(pathId: number, request: Request, reached: Map<number, Thing | null>): Thing | null {
    const known = reached.get(pathId);
    if (known !== undefined) return known;
    const path = request.ObjectPaths[String(pathId)];
    if (path === undefined) throw new NotInStandIn(`object path ${String(pathId)}`);
    const found = this.follow(path, request, reached);
    reached.set(pathId, found);
    return found;
  }

  private follow(path: Path, request: Request, reached: Map<number, Thing | null>): Thing | null {
    if (path.ObjectPathType === PATH.root) return thing(WORKBOOK, this.world.book);
    if (path.ObjectPathType === PATH.nothing) return null;
    if (path.ObjectPathType === PATH.made) {
      const service = SERVICES[path.Name];
      if (service === undefined) throw new NotInStandIn(`the object ${path.Name}`);
      return thing(service, undefined);
    }
    if (path.ObjectPathType === PATH.reference) {
      const kept = this.world.references.get(path.Name);
      if (kept === undefined)
        throw new ExcelError('InvalidObjectPath', 'The object path has become invalid.');
      return kept;
    }
    const parent = this.reach(path.ParentObjectPathId ?? -1, request, reached);
    if (parent === null) return null;
    const { kind, self } = parent;
    if (path.ObjectPathType === PATH.property) {
      const part = kind.parts[path.Name];
      if (part === undefined) throw new NotInStandIn(`${kind.name}.${path.Name}`);
      return part(self, this.world);
    }
    const given = this.arguments(path.ArgumentInfo, request, reached);
    if (path.ObjectPathType === PATH.indexer) {
      if (kind.find === undefined) throw new NotInStandIn(`${kind.name}[…]`);
      const one = kind.find(self, given[0], this.world);
      if (one === undefined) throw itemNotFound();
      return one;
    }
    if (path.ObjectPathType !== PATH.method) {
      throw new NotInStandIn(`path type ${String(path.ObjectPathType)} (${path.Name})`);
    }
    const result = this.call(parent, path.Name, given);
    if (result === null) return null;
    if (!isThing(result)) throw new NotInStandIn(`${kind.name}.${path.Name} as an object`);
    return result;
  }

  private call(target: Thing, name: string, given: readonly unknown[]): unknown {
    const { kind, self } = target;
    const { methods } = kind;
    const own = methods[name];
    if (own !== undefined) return own(self, given, this.world);
    if (name === '_KeepReference') return null;
    if (/^_(Unr|R)egister/.test(name)) {
      const event = `${kind.name}.${name.replace(/^_(Unr|R)egister/, '')}`;
      if (name.startsWith('_Un')) this.world.listening.delete(event);
      else this.world.listening.add(event);
      return null;
    }
    const firm = name.endsWith('OrNullObject') ? methods[name.slice(0, -'OrNullObject'.length)] : undefined;
    if (firm === undefined) throw new NotInStandIn(`${kind.name}.${name}()`);
    try {
      return firm(self, given, this.world);
    } catch (thrown) {
      if (thrown instanceof ExcelError && thrown.code === 'ItemNotFound') return null;
      throw thrown;
    }
  }

  private arguments(
    info: Arguments | undefined,
    request: Request,
    reached: Map<number, Thing | null>,
  ): unknown[] {
    const paths = info?.ReferencedObjectPathIds;
    return (info?.Arguments ?? []).map((value, at) => {
      const path = paths?.[at];
      return typeof path === 'number' && path > 0 ? this.reach(path, request, reached) : value;
    });
  }

  private identify({ kind, self }: Thing): Record<string, unknown> {
    const identity: Record<string, unknown> = {};
    if (kind.id !== undefined) identity['Id'] = kind.id(self);
    if (kind.referenced === true) identity['_ReferenceId'] = this.world.keep({ kind, self });
    return identity;
  }

  private set(target: Thing, name: string, value: unknown): void {
    const property = SET_AS[`${target.kind.name}.${name}`] ?? pascal(name);
    const scalar = target.kind.scalars[property];
    if (scalar?.set === undefined) throw new NotInStandIn(`setting ${target.kind.name}.${name}`);
    scalar.set(target.self, value, this.world);
  }

  /** `range.set({…})` in the client may arrive as one nested record. */
  private update(target: Thing, record: unknown): void {
    for (const [name, value] of Object.entries((record ?? {}) as Record<string, unknown>)) {
      const part = target.kind.parts[pascal(name)];
      if (part === undefined) this.set(target, name, value);
      else {
        const one = part(target.self, this.world);
        if (one === null) throw itemNotFound();
        this.update(one, value);
      }
    }
  }

  private load(target: Thing, query: Query): Record<string, unknown> {
    const wanted = [...(query.Select ?? []), ...(query.Expand ?? [])];
    const { items } = target.kind;
    if (items === undefined) return this.read(target, wanted);
    const from = query.Skip ?? 0;
    const members = items(target.self, this.world).slice(from, from + (query.Top ?? Infinity));
    const own = wanted.filter((name) => pascal(name) in target.kind.scalars && pascal(name) === 'Count');
    const theirs = wanted.filter((name) => !own.includes(name));
    return {
      ...(own.length > 0 ? this.read(target, own) : this.identify(target)),
      _Items: members.map((one) => this.read(one, theirs)),
    };
  }

  private read(target: Thing, wanted: readonly string[]): Record<string, unknown> {
    const { kind, self } = target;
    const record = this.identify(target);
    const deeper = new Map<string, string[]>();
    const plain = wanted.length === 0 ? ['*'] : wanted;
    for (const name of plain) {
      const [first = '', ...rest] = name.split(/[/.]/);
      if (first === '*' || first === '$all' || first === '$none') {
        if (first !== '$none')
          for (const [each, scalar] of Object.entries(kind.scalars))
            record[each] = scalar.get(self, this.world);
      } else if (rest.length > 0 || pascal(first) in kind.parts) {
        deeper.set(pascal(first), [
          ...(deeper.get(pascal(first)) ?? []),
          ...(rest.length > 0 ? [rest.join('/')] : []),
        ]);
      } else {
        const scalar = kind.scalars[pascal(first)];
        if (scalar === undefined) throw new NotInStandIn(`${kind.name}.${first}`);
        record[pascal(first)] = scalar.get(self, this.world);
      }
    }
    for (const [name, below] of deeper) {
      const part = kind.parts[name];
      if (part === undefined) throw new NotInStandIn(`${kind.name}.${name}`);
      const one = part(self, this.world);
      record[name] = one === null ? null : this.load(one, { Select: below });
    }
    return record;
  }
}
