/** Every worksheet function that is computed here, each file of them read once. */
import './arrays';
import './convert';
import './dates';
import './digits';
import './distributions';
import './logic';
import './lookups';
import './money';
import './numbers';
import './statistics';
import './sums';
import './text';
import { natives } from './call';
import { FORMS } from './forms';

export const PROVEN: ReadonlySet<string> = new Set([...natives.keys(), ...FORMS.names]);
