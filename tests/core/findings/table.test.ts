import { expect, it } from 'vitest';
import { FINDINGS } from '../../../src/core/findings/table';
import * as audit from '../../../src/core/findings/audit';
import * as cell from '../../../src/core/findings/cell';
import * as cloth from '../../../src/core/findings/cloth';
import * as heading from '../../../src/core/findings/heading';
import * as measure from '../../../src/core/findings/measure';
import * as price from '../../../src/core/findings/price';
import * as reading from '../../../src/core/findings/reading';
import * as rolls from '../../../src/core/findings/rolls';
import { RULES } from '../../../src/core/house/rules';
import * as auditRules from '../../../src/core/house/audit';
import * as clothRules from '../../../src/core/house/cloth';
import * as headingRules from '../../../src/core/house/heading';
import * as measureRules from '../../../src/core/house/measure';
import * as priceRules from '../../../src/core/house/price';

const keysOf = (rooms: readonly object[]): string[] =>
  rooms.flatMap((room) => Object.values(room).flatMap((table: object) => Object.keys(table)));

it('no finding stands in two tables, where the later would hide the other', () => {
  const keys = keysOf([audit, cell, cloth, heading, measure, price, reading, rolls]);
  expect(keys.sort()).toEqual(Object.keys(FINDINGS).sort());
});

it('no house rule does either', () => {
  const keys = keysOf([auditRules, clothRules, headingRules, measureRules, priceRules]);
  expect([...keys, 'inForceFrom', 'unit'].sort()).toEqual(Object.keys(RULES).sort());
});
