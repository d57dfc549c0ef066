/** Whether the sheets add up: one row a check, and one word for them all. */
import { areaAt } from '../address';
import type { CellPut } from '../book';
import { ruleCell } from './costs';
import { PARTS } from './price-terms';
import { laidOut, tableDraft, titled, together, type Draft, type Job } from './draft';

const HEADER = 4;

interface Check {
  readonly what: string;
  /** A formula for how much is wrong: 0 where all is well. */
  readonly wrong: string;
  readonly todo: CellPut;
}

/** Shares above the whole, and a margin that leaves no cost: 8.25 typed for 8.25 %. */
function sharesCheck(job: Job): Check {
  const parts = PARTS.map((part) => job.name(part));
  const less = job.name('Making_break_less');
  const spares = ruleCell(job, 'spare windows');
  const most = `MAX(${[...parts, less].join(',')},IF(ISNUMBER(${spares}),${spares},0))`;
  const margin = `AND(${job.name('Sell_basis')}="margin on selling price",N(${job.name('Sell_rate')})>=1)`;
  return {
    what: 'shares above the whole: tax, discount, deposit, spares, making less; a margin of 100% or more',
    wrong: `=${parts.map((part) => `(N(${part})>1)`).join('+')}+COUNTIF(${less},">1")+IF(ISNUMBER(${spares}),(${spares}>1)*1,0)+IF(${margin},1,0)`,
    todo: {
      formula: `=IF(${most}>1,"write "&${most}&"% if that is meant by "&${most}&", as 8.25% for 8.25","a margin on the selling price stays below 100%; a markup may be more")`,
    },
  };
}

function checksOf(job: Job): readonly Check[] {
  const name = (base: string): string => job.name(base);
  const openings = `(${name('Window_openings')}<>"")`;
  const lacking = (range: string): string => `SUMPRODUCT(${openings}*NOT(ISNUMBER(${name(range)})))`;
  return [
    {
      what: 'windows whose yardage could not be worked out',
      wrong: `=${lacking('Window_yardage')}`,
      todo: 'look at their yardage on the sheet of windows: the cell says why; a row put in between needs the formulas of the row above',
    },
    {
      what: 'windows without a fabric of the list',
      wrong: `=SUMPRODUCT(${openings}*(COUNTIF(${name('Fabric_names')},${name('Window_fabrics')})=0))`,
      todo: 'choose a fabric, or add it to the sheet of fabrics',
    },
    {
      what: 'windows whose making charge is not set',
      wrong: `=${lacking('Window_labor')}`,
      todo: 'enter the making charges on the sheet of prices, or none',
    },
    sharesCheck(job),
    {
      what: 'windows that are not on the quote',
      wrong: `=SUMPRODUCT(${openings}*1)-SUMPRODUCT((${name('Quote_rooms')}<>"")*1)`,
      todo: 'fill the quote’s table down as far as the windows go',
    },
    {
      what: 'extras without a price',
      wrong: `=SUMPRODUCT((${name('Extra_whats')}<>"")*NOT(ISNUMBER(${name('Extra_prices')})))`,
      todo: 'say on the sheet of extras what they cost or sell for; 0 as your price where nothing is charged',
    },
    {
      what: 'fabric needed against fabric of the windows',
      wrong: `=IFERROR(ROUND(SUM(${name('Fabric_needed')})-SUM(${name('Window_yardage')}),6),1)`,
      todo: 'see that every fabric stands once on the sheet of fabrics',
    },
    {
      what: 'fabrics used without a flame certificate, on a public job',
      wrong: `=IF(${name('Job_public')}="yes",IFERROR(SUMPRODUCT((${name('Fabric_names')}<>"")*(${name('Fabric_needed')}<>0)*(${name('Fabric_needed')}<>"")*(${name('Fabric_certificates')}="")),1),0)`,
      todo: 'ask the supplier for the certificate of the lot; local codes and licensed practice decide',
    },
    {
      what: 'quote’s total against its parts',
      wrong: `=IFERROR(ROUND(${name('Quote_total')},2)-ROUND(SUM(${name('Quote_prices')})+${name('Quote_tax')}+SUM(${name('Quote_extras')}),2),1)`,
      todo: {
        formula: `=IF(ISNUMBER(${name('Quote_total')}),"a total was typed over: put its formula back","it cannot be added yet: mend the lines above first")`,
      },
    },
  ];
}

export function checksSheet(job: Job): Draft {
  const sheet = job.sheet('Checks');
  const checks = checksOf(job);
  return together(
    titled(sheet, 'Checks', 'Every line should say ok. The first word stands on the other sheets too.'),
    {
      puts: [
        {
          area: areaAt(sheet, 2, 0),
          formula: `=IF(SUMPRODUCT((${job.name('Check_results')}<>"ok")*1)=0,"all checks are well",SUMPRODUCT((${job.name('Check_results')}<>"ok")*1)&" of ${checks.length} checks want a look: see the sheet of checks")`,
        },
      ],
      newNames: [{ name: job.name('Checks_all'), area: areaAt(sheet, 2, 0) }],
      dress: [{ area: areaAt(sheet, 2, 0), role: 'check' }],
    },
    tableDraft(job, {
      sheet,
      name: 'Checks',
      row: HEADER,
      rows: checks.length,
      columns: [
        { key: 'what', heading: 'check', role: 'note', cells: checks.map((one) => one.what) },
        {
          key: 'wrong',
          heading: 'difference',
          role: 'working',
          cells: checks.map((one) => ({ formula: one.wrong })),
        },
        {
          key: 'result',
          heading: 'result',
          role: 'check',
          name: 'Check_results',
          formula: (cell) => `=IF(ISERROR(${cell('wrong')}),"look",IF(${cell('wrong')}=0,"ok","look"))`,
        },
        { key: 'todo', heading: 'what to do', role: 'note', cells: checks.map((one) => one.todo) },
      ],
    }),
    laidOut(job, sheet, { header: HEADER, landscape: true, widths: [52, 12, 10, 70] }),
  );
}
