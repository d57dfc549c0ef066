import { describe, expect, it } from 'vitest';
import { cords, flame } from '../../../src/core/audit/cautions';
import { findsBy } from './row';

describe('the caution of fire', () => {
  it('asks for a certificate in a public job, and takes no word for “none” as one', () => {
    const found = (certificate: string) =>
      findsBy(flame, { 'public job': 'yes', 'flame certificate': certificate });
    expect(found('FR-1182')).toEqual([]);
    for (const none of ['', 'no', 'pending', 'n/a', '?', 'TBC'])
      expect(found(none), none).toEqual(['noCertificate at flame certificate']);
    expect(findsBy(flame, { 'public job': 'yes', heading: 'pinch' })).toEqual([
      'noCertificate at public job',
    ]);
    expect(findsBy(flame, { 'public job': 'no', 'flame certificate': '' })).toEqual([]);
  });

  // NFPA 701, scope: Method 1 is for cloth up to 21 oz/yd² (700 g/m²).
  it('doubts Method 1 above 21 oz/yd²', () => {
    const found = (weight: number) =>
      findsBy(flame, { 'flame certificate': 'NFPA 701 Method 1', 'cloth weight': weight });
    expect(found(21)).toEqual([]);
    expect(found(21.5)).toEqual(['aboveMethodOne at cloth weight']);
  });
});

it('a cord where children are is a caution, unless it is made safe', () => {
  const found = (drawn: string, children: string, safe: string) =>
    findsBy(cords, { 'drawn by': drawn, children, 'child safe': safe });
  expect(found('cord', 'yes', '')).toEqual(['cordInReach at drawn by']);
  expect(found('cord', 'no', 'no')).toEqual(['cordInReach at drawn by']);
  expect(found('cord', 'yes', 'yes')).toEqual([]);
  expect(found('wand', 'yes', '')).toEqual([]);
});
