/** Objects that the client makes by name rather than reaches from the workbook. */
import { kind, type Kind } from '../kind';

const ADDIN: Kind<undefined> = kind<undefined>('AddinInternalService', {
  methods: { NotifyActionHandlerReady: () => undefined },
});

interface Handed {
  readonly id: number;
  readonly value: unknown;
  readonly failed?: boolean;
  readonly errorCode?: number;
}

/** Where the functions' runtime hands its answers in. */
const FUNCTIONS: Kind<undefined> = kind<undefined>('CustomFunctions', {
  methods: {
    _SetOsfControlContainerReadyForCustomFunctions: () => undefined,
    SetInvocationResults(_, [results], world) {
      for (const { id, value, failed, errorCode = 0 } of results as readonly Handed[]) {
        world.calls.get(id)?.(failed === true ? { sentence: String(value), code: errorCode } : { value });
        world.calls.delete(id);
      }
    },
  },
});

export const SERVICES: Readonly<Record<string, Kind<undefined>>> = {
  'Microsoft.InternalService.AddinInternalService': ADDIN,
  'Microsoft.ExcelServices.CustomFunctions': FUNCTIONS,
};
