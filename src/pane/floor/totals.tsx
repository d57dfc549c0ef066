/** What the floor comes to: by fabric, lining, room type or floor, and its hardware. */
import { Caption1, Field, Select } from '../kit';
import { useState } from 'react';
import {
  clothsBehind,
  GROUPS,
  piecesOf,
  rodTotals,
  totalsBy,
  type Floor,
  type GroupName,
} from '../../book/floor/floor';
import { tally } from '../../core/floor/tally';
import { digits, showLength, showYardage } from '../../core/exact/unit';
import { SparesField, type Spares } from './spares';
import { FigureTable, type FigureRow } from './table';

type By = GroupName | 'hardware';

interface Props {
  readonly floor: Floor;
  readonly spares: Spares;
}

export function FloorTotals({ floor, spares }: Props) {
  const [by, setBy] = useState<By>('fabric');
  const { unit, rules } = floor.house;
  const behindFace = clothsBehind(floor.windows);
  // Several columns of linings would be wider than the pane: those stand under their row.
  const beside = behindFace.length === 1 ? behindFace : [];
  const whole = tally(
    floor.windows.map(({ work }) => work),
    rules,
  );
  const rods = rodTotals(floor.windows);
  const pieces = piecesOf(rods);
  return (
    <>
      <SparesField {...spares} />
      <Field label="Totals by" orientation="horizontal">
        <Select
          size="small"
          value={by}
          onChange={(_, { value }) => {
            setBy(value as By);
          }}
        >
          {[...Object.keys(GROUPS), 'hardware'].map((name) => (
            <option key={name}>{name}</option>
          ))}
        </Select>
      </Field>
      {by === 'hardware' ? (
        <FigureTable
          says="Hardware"
          headings={['rod', 'rods', ...pieces.map(([, what]) => what)]}
          rows={rods.map(({ rod, rods: count, hardware }): FigureRow => ({
            name: showLength(rod, unit),
            figures: [count, ...pieces.map(([key]) => hardware[key])].map(digits),
          }))}
        />
      ) : (
        <FigureTable
          says={`Totals by ${by}`}
          headings={[by, 'windows', 'widths', 'face', ...beside]}
          rows={totalsBy(floor.windows, GROUPS[by]).map(
            ({ name, windows, widths, yardage, behind }): FigureRow => {
              const linings = behindFace.map((cloth) => {
                const length = behind[cloth];
                return length === undefined ? '' : showYardage(length, unit);
              });
              const says = behindFace.flatMap((cloth, at) =>
                linings[at] ? [`${cloth} ${linings[at]}`] : [],
              );
              return {
                name,
                figures: [
                  digits(windows),
                  digits(widths),
                  showYardage(yardage, unit),
                  ...(beside.length > 0 ? linings : []),
                ],
                ...(beside.length === 0 && says.length > 0 && { under: says.join(', ') }),
              };
            },
          )}
        />
      )}
      <Caption1>
        In all {whole.windows} windows, {whole.widths} widths
        {whole.making === undefined ? '' : `, making ${whole.making.toFixed(2)}`}.
      </Caption1>
    </>
  );
}
