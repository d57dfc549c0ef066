/** The genuine, unmodified office.js in Node, talking to the stand-in: no page, no window but a bare one. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import vm from 'node:vm';
import type { ExcelHost, Request } from './host';

const FILE = createRequire(import.meta.url).resolve('@microsoft/office-js/dist/excel-web-16.00.debug.js');
let script: vm.Script | undefined;

interface Bridge {
  sendMessageToHost(text: string): void;
  onMessageFromHost?: (text: string) => void;
}

interface Genuine {
  readonly Excel: typeof Excel;
  readonly OfficeExtension: typeof OfficeExtension & {
    readonly HostBridge: { init(bridge: Bridge): void };
    readonly CommonUtility: { _doApiNotSupportedCheck: boolean };
  };
}

export interface Client {
  readonly Excel: typeof Excel;
  readonly OfficeExtension: typeof OfficeExtension;
  readonly Office: { readonly context: { readonly requirements: Requirements } };
}

interface Requirements {
  isSetSupported(name: string, version?: string | number): boolean;
}

/** Requirement sets as an Excel of that version knows them. */
const supports = (version: string): Requirements => ({
  isSetSupported(name, wanted = '1.1') {
    if (name === 'DelayForCellEdit') return true;
    if (name !== 'ExcelApi') return false;
    const minor = (text: string): number => Number(text.split('.')[1] ?? 0);
    return minor(String(wanted)) <= minor(version);
  },
});

/** A client of its own for each host. `version` is the newest ExcelApi that this Excel knows. */
export function connect(host: ExcelHost, version = '1.15', later: typeof setTimeout = setTimeout): Client {
  script ??= new vm.Script(readFileSync(FILE, 'utf8'), { filename: 'excel-web-16.00.debug.js' });
  const context = vm.createContext({
    navigator: { userAgent: 'Node' },
    console,
    setTimeout: later,
    clearTimeout,
    setInterval,
    clearInterval,
  });
  vm.runInContext('var window = this;', context);
  script.runInContext(context);
  const genuine = context as unknown as Genuine;
  const office = { context: { requirements: supports(version) } };
  Object.defineProperty(genuine, 'Office', { value: office });
  // An older Excel refuses what it does not know; the client’s own check does it with the same code.
  genuine.OfficeExtension.CommonUtility._doApiNotSupportedCheck = true;
  genuine.OfficeExtension.HostBridge.init(bridgeTo(host));
  return { Excel: genuine.Excel, OfficeExtension: genuine.OfficeExtension, Office: office };
}

interface Message {
  readonly id: number;
  readonly type: number;
  readonly flags: number;
  readonly message: { readonly body: Request };
}

function bridgeTo(host: ExcelHost): Bridge {
  const bridge: Bridge = {
    sendMessageToHost(text) {
      const { id, type, flags, message } = JSON.parse(text) as Message;
      void host.answer(message.body, flags).then((answered) => {
        if (answered === undefined) return;
        const { status, body } = answered;
        const reply = { id, type, message: { statusCode: status, headers: {}, body: JSON.stringify(body) } };
        bridge.onMessageFromHost?.(JSON.stringify(reply));
      });
    },
  };
  host.onEvent((entry) => {
    bridge.onMessageFromHost?.(JSON.stringify({ type: 3, message: { entries: [entry] } }));
  });
  return bridge;
}
