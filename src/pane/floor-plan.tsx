/** The cutting plan: what the cloth comes on, the search with its progress, every roll drawn, the list written. */
import {
  Badge,
  Button,
  Caption1,
  Field,
  Input,
  makeStyles,
  MessageBar,
  MessageBarBody,
  Radio,
  RadioGroup,
  Select,
  Text,
  tokens,
} from '@fluentui/react-components';
import { useState } from 'react';
import type { Book } from '../book/book';
import { cuttingJob, GROUPS, type Floor } from '../book/floor';
import { writeFloor } from '../book/floor-sheets';
import type { CuttingJob } from '../core/cutting';
import { planFindings } from '../core/rolls';
import { showYardage, type Unit } from '../core/unit';
import type { SearchReport } from '../solve/search';
import { searchPlan, type Found } from './floor-search';
import { NO_ROLL, readSupply, ReceivedRolls, type SupplyTyped } from './floor-supply';
import { RollDrawing } from './roll-drawing';
import { TaskLine, useTask } from './task';

const useStyles = makeStyles({
  pair: { display: 'grid', gridTemplateColumns: '1fr 1fr', gap: tokens.spacingHorizontalS },
  acts: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
  plan: { display: 'grid', gridTemplateColumns: 'minmax(0, 1fr)', gap: tokens.spacingVerticalS },
  badges: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalXS },
  message: { whiteSpace: 'normal' },
});

interface Planned {
  readonly job: CuttingJob;
  readonly found: Found;
  /** The floor it was made for. */
  readonly floor: Floor;
}

interface Props {
  readonly book: Book;
  readonly floor: Floor;
  readonly fabrics: readonly string[];
}

export function FloorPlan({ book, floor, fabrics }: Props) {
  const styles = useStyles();
  const task = useTask();
  const { unit } = floor.house;
  const [chosen, setChosen] = useState('');
  const [supplies, setSupplies] = useState<Readonly<Record<string, SupplyTyped>>>({});
  const [seconds, setSeconds] = useState('20');
  const [doing, setDoing] = useState<SearchReport>();
  const [plans, setPlans] = useState<ReadonlyMap<string, Planned>>(new Map());
  const fabric = fabrics.includes(chosen) ? chosen : (fabrics[0] ?? '');
  const usual: SupplyTyped = {
    kind: 'ordered',
    ordered: unit.large === 'yd' ? '60' : '50',
    received: [NO_ROLL],
    spares: '0 %',
  };
  const supply = supplies[fabric] ?? usual;
  const change = (part: Partial<SupplyTyped>): void => {
    setSupplies({ ...supplies, [fabric]: { ...supply, ...part } });
  };
  const planned = plans.get(fabric);
  const current = planned?.floor === floor ? planned : undefined;
  const ready = fabrics.flatMap((one) => {
    const of = plans.get(one);
    return of?.floor === floor ? [{ fabric: one, plan: of.found.plan }] : [];
  });

  const plan = (): void => {
    void task.run(`Planning ${fabric}`, async ({ signal }) => {
      const { rolls, spares } = readSupply(supply, unit);
      const windows = floor.windows.filter((one) => GROUPS.fabric(one) === fabric);
      const job = cuttingJob(windows, rolls, spares, unit);
      const found = await searchPlan(job, {
        seconds: Number(seconds) > 0 ? Number(seconds) : 20,
        signal,
        progress: setDoing,
      });
      setDoing(undefined);
      setPlans((all) => new Map(all).set(fabric, { job, found, floor }));
      if (found.unsearched !== undefined)
        return {
          intent: 'warning',
          text: `The search could not start here (${found.unsearched}). This is the quick plan with its bound.`,
        };
      return found.ended === 'stopped'
        ? { intent: 'info', text: 'Stopped. This is the best plan found so far.' }
        : undefined;
    });
  };
  const write = (): void => {
    void task.run('Writing the list', async (watch) => {
      const { sheet } = await writeFloor(book, floor, ready, watch);
      return { intent: 'success', text: `The list stands on the sheet “${sheet}”. One undo takes it back.` };
    });
  };

  return (
    <div className={styles.plan}>
      {fabrics.length > 1 && (
        <Field label="Fabric">
          <Select
            size="small"
            value={fabric}
            onChange={(_, { value }) => {
              setChosen(value);
            }}
          >
            {fabrics.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </Select>
        </Field>
      )}
      <Field label="Rolls">
        <RadioGroup
          layout="horizontal"
          value={supply.kind}
          onChange={(_, { value }) => {
            change({ kind: value as SupplyTyped['kind'] });
          }}
        >
          <Radio value="ordered" label="to be ordered" />
          <Radio value="received" label="received" />
        </RadioGroup>
      </Field>
      {supply.kind === 'received' && (
        <ReceivedRolls
          rolls={supply.received}
          unit={unit}
          change={(received) => {
            change({ received });
          }}
        />
      )}
      <div className={styles.pair}>
        {supply.kind === 'ordered' && (
          <Field label={`Each roll (${unit.large})`}>
            <Input
              size="small"
              value={supply.ordered}
              onChange={(_, { value }) => {
                change({ ordered: value });
              }}
            />
          </Field>
        )}
        <Field label="Spares">
          <Input
            size="small"
            value={supply.spares}
            onChange={(_, { value }) => {
              change({ spares: value });
            }}
          />
        </Field>
        <Field label="Seconds at most">
          <Input
            size="small"
            value={seconds}
            onChange={(_, { value }) => {
              setSeconds(value);
            }}
          />
        </Field>
      </div>
      <div className={styles.acts}>
        <Button size="small" appearance="primary" disabled={task.running !== undefined} onClick={plan}>
          {planned === undefined ? 'Plan the cuts' : 'Plan again'}
        </Button>
        {ready.length > 0 && (
          <Button size="small" disabled={task.running !== undefined} onClick={write}>
            Write the list
          </Button>
        )}
      </div>
      <TaskLine task={task} />
      {task.running !== undefined && doing !== undefined && (
        <Caption1>
          {doing.plan.rolls.length} rolls so far, at least {doing.plan.lowerBound}: {doing.doing}
        </Caption1>
      )}
      {planned !== undefined && current === undefined && (
        <Caption1>The windows were read again since: plan the cuts anew.</Caption1>
      )}
      {current !== undefined && <Shown of={current} unit={unit} />}
      {ready.length > 0 && ready.length < fabrics.length && (
        <Caption1>
          The list would hold {ready.map((one) => one.fabric).join(', ')}; the other fabrics are not planned
          yet.
        </Caption1>
      )}
    </div>
  );
}

function Shown({ of: { job, found }, unit }: { readonly of: Planned; readonly unit: Unit }) {
  const styles = useStyles();
  const { plan, gap, seconds } = found;
  const rolls = plan.rolls.length;
  const proof = plan.proven
    ? 'proven fewest'
    : plan.short.length > 0
      ? 'not all cuts fit'
      : `${gap} more than the bound`;
  return (
    <>
      <Text weight="semibold">
        {rolls} {rolls === 1 ? 'roll' : 'rolls'}, {showYardage(plan.opened, unit)} in all
      </Text>
      <div className={styles.badges}>
        <Badge appearance="tint" color={plan.proven ? 'success' : 'warning'}>
          {proof}
        </Badge>
        <Badge appearance="outline">at least {plan.lowerBound}</Badge>
        <Badge appearance="outline">{(plan.utilisation / 100).toFixed(1)} % used</Badge>
        <Badge appearance="outline">{seconds.toFixed(1)} s</Badge>
      </div>
      {planFindings(job, plan, unit).map(({ sentence, weight }) => (
        <MessageBar key={sentence} intent={weight === 'stop' ? 'error' : 'warning'} layout="multiline">
          <MessageBarBody className={styles.message}>{sentence}</MessageBarBody>
        </MessageBar>
      ))}
      <RollDrawing plan={plan} rolls={job.rolls} unit={unit} />
    </>
  );
}
