/** Objects that the client makes by name rather than reaches from the workbook. */
import { kind, type Kind } from '../kind';

const ADDIN: Kind<undefined> = kind<undefined>('AddinInternalService', {
  methods: { NotifyActionHandlerReady: () => undefined },
});

export const SERVICES: Readonly<Record<string, Kind<undefined>>> = {
  'Microsoft.InternalService.AddinInternalService': ADDIN,
};
