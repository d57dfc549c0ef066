/** An invented workroom's rules: what its figures follow, and the same rules as pairs of name and value. */

export type Heading =
  'pinch' | 'goblet' | 'cartridge' | 'box' | 'inverted' | 'pencil' | 'rod pocket' | 'grommet';

export interface House {
  readonly unit: 'inches' | 'centimetres';
  readonly return: number;
  /** Each leading edge of a pair on a track; nothing for other headings and draws. */
  readonly overlap: number;
  readonly oneWayReturns: 'both ends' | 'one end';
  readonly hangOn: 'rings' | 'track';
  /** The headings this house makes, and how full. */
  readonly fullness: Partial<Record<Heading, number>>;
  readonly basis: 'finished width' | 'rod width';
  readonly rounding: 'whole per panel' | 'half per panel' | 'whole per pair';
  readonly sideHem: number;
  readonly seam: number;
  readonly selvage: number;
  readonly fabricWidth: number;
  readonly top: Partial<Record<Heading, number>>;
  readonly bottom: number;
  readonly shrinkage: number;
  readonly repeatRule:
    'every cut up' | 'first cut exact' | 'one repeat each' | 'one repeat with every length';
  readonly yardStep: number;
  readonly yardageBy: 'order' | 'window';
  readonly lining: {
    readonly cut: 'own allowances' | 'less than face';
    readonly width: number;
    readonly shorter: number;
    readonly top: number;
    readonly bottom: number;
    readonly less: number;
    readonly marginLeading: number;
    readonly marginOuter: number;
  };
  /** Added to what was measured, by what hangs there and the point measured. */
  readonly drops: {
    readonly newRodRings: number;
    readonly hungRing: number;
    readonly newRodGrommet: number;
    readonly hungRodGrommet: number;
  };
  /** Openings up to so much take a side extension from the low to the high figure. */
  readonly extensions: readonly {
    readonly upTo: number | undefined;
    readonly low: number;
    readonly high: number;
  }[];
  readonly grommetSpacing: number;
  /** Making charged a width by rule; a house without it writes its own rates in the sheet. */
  readonly labor?: {
    readonly by: Partial<Record<Heading, number>>;
    /** Added where lined or blackout lined. */
    readonly lined: number;
    readonly heightFrom: number;
    readonly heightSurcharge: number;
  };
  readonly installation?: number;
  readonly discount: number;
  readonly taxRate: number;
  readonly taxBasis: 'line' | 'invoice';
  readonly taxLabor: boolean;
  readonly taxInstallation: boolean;
  readonly deposit: number;
  readonly tolerance: { readonly length: number; readonly yardage: number };
}

export type RulePair = readonly [name: string, value: string | number];

const yesOrNo = (yes: boolean): string => (yes ? 'yes' : 'no');

function clothRules(house: House): RulePair[] {
  const { lining } = house;
  return [
    ['return', house.return],
    ['overlap', house.overlap],
    ['one way returns', house.oneWayReturns],
    ...Object.entries(house.fullness).map(([heading, full]): RulePair => [`fullness ${heading}`, full]),
    ['fullness basis', house.basis],
    ['widths rounding', house.rounding],
    ['side hem', house.sideHem],
    ['seam', house.seam],
    ['selvage', house.selvage],
    ['usual fabric width', house.fabricWidth],
    ['usual lining width', lining.width],
    ...Object.entries(house.top).map(([heading, top]): RulePair => [`top allowance ${heading}`, top]),
    ['bottom allowance', house.bottom],
    ['shrinkage', house.shrinkage],
    ['repeat rule', house.repeatRule],
    ['roll start', 'none'],
    ['lining cut', lining.cut],
    ['lining shorter', lining.shorter],
    ['lining top', lining.top],
    ['lining bottom', lining.bottom],
    ['lining less', lining.less],
    ['lining margin leading', lining.marginLeading],
    ['lining margin outer', lining.marginOuter],
    ['yardage step', house.yardStep],
    ['yardage rounded by', house.yardageBy],
    ['share half widths', 'no'],
  ];
}

function moneyRules(house: House): RulePair[] {
  const { labor } = house;
  const making: RulePair[] =
    labor === undefined
      ? []
      : [
          ...Object.entries(labor.by).map(([heading, rate]): RulePair => [`labor ${heading}`, rate]),
          ['labor lined', labor.lined],
          ['labor blackout', labor.lined],
          ['labor height from', labor.heightFrom],
          ['labor height surcharge', labor.heightSurcharge],
        ];
  return [
    ...making,
    ['cent rounding', 'half up'],
    ...(house.installation === undefined
      ? []
      : [['installation per window', house.installation] satisfies RulePair]),
    ['discount', house.discount],
    ['tax rate', house.taxRate],
    ['tax basis', house.taxBasis],
    ['tax labor', yesOrNo(house.taxLabor)],
    ['tax installation', yesOrNo(house.taxInstallation)],
    ['deposit', house.deposit],
  ];
}

/** The rules in force, in the words of the rules sheet. */
export function rulePairs(house: House): RulePair[] {
  const bands = ['small', 'medium', 'large'] as const;
  return [
    ['unit', house.unit],
    ...house.extensions.flatMap(({ upTo, low, high }, at): RulePair[] => {
      const band = bands[at] ?? 'large';
      const ends: RulePair[] = [
        [`extension ${band} low`, low],
        [`extension ${band} high`, high],
      ];
      return upTo === undefined ? ends : [[`extension ${band} up to`, upTo], ...ends];
    }),
    ['drop new rod rings', house.drops.newRodRings],
    ['drop hung ring', house.drops.hungRing],
    ['drop new rod grommet', house.drops.newRodGrommet],
    ['drop hung rod grommet', house.drops.hungRodGrommet],
    ['hang on', house.hangOn],
    ...clothRules(house),
    ['grommet spacing', house.grommetSpacing],
    ...moneyRules(house),
    ['length tolerance', house.tolerance.length],
    ['yardage tolerance', house.tolerance.yardage],
    ['money tolerance', 0.01],
  ];
}
