/** The cutting plan: what the cloth comes on, the search with its progress, every roll drawn, the list written. */
import {
  Badge,
  Button,
  Caption1,
  Field,
  makeStyles,
  MessageBar,
  MessageBarBody,
  Radio,
  RadioGroup,
  Text,
  TextField,
  ChoiceField,
  tokens,
} from '../kit';
import { useMemo, useState } from 'react';
import type { Book } from '../../book/book';
import type { Floor } from '../../book/floor/floor';
import { writeFloor } from '../../book/floor/sheets';
import type { ReceivedSeen } from '../../book/floor/received';
import type { CuttingJob } from '../../core/rolls/cutting';
import { clothFindings, clothJob, clothsOf, type Cloth } from '../../core/floor/floor-cuts';
import { NO_ROLL, sameName } from '../../core/rolls/received';
import { showYardage, type Unit } from '../../core/exact/unit';
import type { SearchReport } from '../../solve/search';
import { searchPlan, type Found } from './search';
import { readSupply, ReceivedRolls, type SupplyTyped } from './supply';
import { RollDrawing } from './roll-drawing';
import { TaskLine, useTask } from '../task';

const useStyles = makeStyles({
  pair: { display: 'grid', gridTemplateColumns: '1fr 1fr', gap: tokens.spacingHorizontalS },
  acts: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
  plan: { display: 'grid', gridTemplateColumns: 'minmax(0, 1fr)', gap: tokens.spacingVerticalS },
  badges: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalXS },
  message: { whiteSpace: 'normal' },
});

interface Planned {
  readonly cloth: Cloth;
  readonly job: CuttingJob;
  readonly found: Found;
  /** The floor it was made for. */
  readonly floor: Floor;
}

interface Props {
  readonly book: Book;
  readonly floor: Floor;
  /** The workbook's own rolls. */
  readonly received: ReceivedSeen | undefined;
}

type Ready = Parameters<typeof writeFloor>[2];

/** What each cloth comes on as it is typed, and its plan once it is found. */
function usePlans({ book, floor, received }: Props) {
  const task = useTask();
  const { unit } = floor.house;
  const [chosen, setChosen] = useState('');
  const [supplies, setSupplies] = useState<Readonly<Record<string, SupplyTyped>>>({});
  const [seconds, setSeconds] = useState('20');
  const [doing, setDoing] = useState<SearchReport>();
  const [plans, setPlans] = useState<ReadonlyMap<string, Planned>>(new Map());
  const cloths = useMemo(
    () => clothsOf(floor.windows.map(({ work }) => work)).filter(({ cuts }) => cuts.length > 0),
    [floor],
  );
  const cloth = cloths.find(({ name }) => name === chosen) ?? cloths[0];
  const name = cloth?.name ?? '';
  const inHand = received?.rolls.get(sameName(name));
  const supply = supplies[name] ?? usualSupply(unit, inHand);
  const change = (part: Partial<SupplyTyped>): void => {
    setSupplies({ ...supplies, [name]: { ...supply, ...part } });
  };
  const ready: Ready = cloths.flatMap((one) => {
    const planned = plans.get(one.name);
    return planned?.floor === floor ? [{ cloth: one, plan: planned.found.plan }] : [];
  });

  const plan = (): void => {
    if (cloth === undefined) return;
    void task.run(`Planning ${cloth.name}`, async ({ signal }) => {
      const job = clothJob(cloth, readSupply(supply, unit), unit);
      const found = await searchPlan(job, {
        seconds: Number(seconds) > 0 ? Number(seconds) : 20,
        signal,
        progress: setDoing,
      });
      setDoing(undefined);
      setPlans((all) => new Map(all).set(cloth.name, { cloth, job, found, floor }));
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
      return { intent: 'success', text: `The list stands on the sheet “${sheet}”.` };
    });
  };
  const planned = plans.get(name);
  return {
    task,
    cloths,
    cloth,
    setChosen,
    supply,
    inHand,
    change,
    seconds,
    setSeconds,
    doing,
    planned,
    ready,
    plan,
    write,
  };
}

const usualSupply = ({ large }: Unit, inHand: SupplyTyped['received'] | undefined): SupplyTyped => ({
  kind: inHand === undefined ? 'ordered' : 'received',
  ordered: large === 'yd' ? '60' : '50',
  received: inHand ?? [NO_ROLL],
});

export function FloorPlan(props: Props) {
  const styles = useStyles();
  const { floor, received } = props;
  const { unit } = floor.house;
  const plans = usePlans(props);
  const { task, cloths, cloth, supply, inHand, planned, ready } = plans;
  return (
    <div className={styles.plan}>
      {cloths.length > 1 && (
        <ChoiceField label="Cloth" value={cloth?.name ?? ''} change={plans.setChosen}>
          {cloths.map((one) => (
            <option key={one.name}>{one.name}</option>
          ))}
        </ChoiceField>
      )}
      <RollsChoice
        supply={supply}
        inHand={inHand}
        unit={unit}
        source={received?.source ?? ''}
        change={plans.change}
      />
      <div className={styles.pair}>
        {supply.kind === 'ordered' && (
          <TextField
            label={`Each roll (${unit.large})`}
            value={supply.ordered}
            change={(ordered) => {
              plans.change({ ordered });
            }}
          />
        )}
        <TextField label="Seconds at most" value={plans.seconds} change={plans.setSeconds} />
      </div>
      <div className={styles.acts}>
        <Button
          size="small"
          appearance="primary"
          disabled={task.running !== undefined || cloth === undefined}
          onClick={plans.plan}
        >
          {planned === undefined ? 'Plan the cuts' : 'Plan again'}
        </Button>
        {ready.length > 0 && (
          <Button size="small" disabled={task.running !== undefined} onClick={plans.write}>
            Write the list
          </Button>
        )}
      </div>
      <TaskLine task={task} />
      <PlanNow {...plans} floor={floor} />
    </div>
  );
}

type NowProps = Pick<ReturnType<typeof usePlans>, 'task' | 'doing' | 'planned' | 'ready' | 'cloths'> &
  Pick<Props, 'floor'>;

/** How far the search is, the plan it found, and what of the floor has none yet. */
function PlanNow({ task, doing, planned, ready, cloths, floor }: NowProps) {
  const current = planned?.floor === floor ? planned : undefined;
  return (
    <>
      {task.running !== undefined && doing !== undefined && (
        <Caption1>
          {doing.plan.rolls.length} rolls so far, at least {doing.plan.lowerBound}: {doing.doing}
        </Caption1>
      )}
      {planned !== undefined && current === undefined && (
        <Caption1>The windows were read again since: plan the cuts anew.</Caption1>
      )}
      {current !== undefined && <Shown planned={current} unit={floor.house.unit} />}
      {ready.length > 0 && ready.length < cloths.length && (
        <Caption1>
          The list would hold {ready.map((one) => one.cloth.name).join(', ')}; the other cloths are not
          planned yet.
        </Caption1>
      )}
    </>
  );
}

interface RollsProps {
  readonly supply: SupplyTyped;
  /** The workbook's own rolls of the cloth, and the sheet that has them. */
  readonly inHand: SupplyTyped['received'] | undefined;
  readonly source: string;
  readonly unit: Unit;
  change(part: Partial<SupplyTyped>): void;
}

/** Whether the cloth's rolls are to be ordered, or which have been received. */
function RollsChoice({ supply, inHand, source, unit, change }: RollsProps) {
  return (
    <>
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
        <>
          <ReceivedRolls
            rolls={supply.received}
            unit={unit}
            change={(typed) => {
              change({ received: typed });
            }}
          />
          {inHand !== undefined && (
            <Caption1>
              {supply.received === inHand
                ? `As “${source}” has them.`
                : `Typed over; “${source}” stays as it is.`}
            </Caption1>
          )}
        </>
      )}
    </>
  );
}

function Shown({ planned: { cloth, job, found }, unit }: { readonly planned: Planned; readonly unit: Unit }) {
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
      {clothFindings(cloth, job, plan, unit).map(({ sentence, weight }) => (
        <MessageBar
          key={sentence}
          intent={weight === 'stop' ? 'error' : weight === 'note' ? 'info' : 'warning'}
        >
          <MessageBarBody className={styles.message}>{sentence}</MessageBarBody>
        </MessageBar>
      ))}
      <RollDrawing plan={plan} rolls={job.rolls} unit={unit} />
    </>
  );
}
