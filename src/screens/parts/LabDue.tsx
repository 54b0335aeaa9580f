/** The day agreed with the laboratory for the order in hand: moved with large targets, agreed with one. */
import { useState } from 'react';
import type { AppActions, AppModel } from '../../app/model.ts';
import { shortDay } from '../../domain/measure/calendar.ts';
import { dayKey, daysLater } from '../format.ts';
import { Target } from './Target.tsx';

interface LabDueProps {
  readonly model: AppModel;
  readonly actions: AppActions;
}

type Order = NonNullable<AppModel['labDue']>;

interface PickerProps {
  readonly order: Order;
  readonly today: string;
  readonly actions: AppActions;
}

function Picker({ order, today, actions }: PickerProps) {
  const [day, setDay] = useState(order.day);
  const to = (days: number) => {
    const next = daysLater(day, days);
    if (next >= today) setDay(next);
  };
  const kept = order.agreed && day === order.day;
  const how = order.agreed ? 'agreed' : 'by the practice’s days';
  return (
    <section className="lab-due" aria-label="Work back from the lab">
      <p>
        Back from the lab: {order.what}, <strong>{shortDay(order.day)}</strong>, {how}
      </p>
      <div className="entry-ends">
        <Target name="A day earlier" refused={daysLater(day, -1) < today} onPress={() => to(-1)}>
          − 1 day
        </Target>
        <Target name="A day later" onPress={() => to(1)}>
          + 1 day
        </Target>
        <Target name="A week later" onPress={() => to(7)}>
          + 1 week
        </Target>
        <Target look="main" refused={kept} onPress={() => actions.press(`labDue:${day}`)}>
          {kept ? 'Agreed' : 'Agree'} {shortDay(day)}
        </Target>
      </div>
    </section>
  );
}

export function LabDue({ model, actions }: LabDueProps) {
  const { labDue, now } = model;
  if (labDue === undefined) return null;
  return <Picker key={`${labDue.order}:${labDue.day}`} order={labDue} today={dayKey(now)} actions={actions} />;
}

/** Where there is no room for more: the day as it stands, agreed with one target; another day is chosen on the summary. */
export function LabAgree({ model: { labDue }, actions }: LabDueProps) {
  if (labDue === undefined) return null;
  const day = shortDay(labDue.day);
  return (
    <Target chosen={labDue.agreed} onPress={() => actions.press(`labDue:${labDue.day}`)}>
      {labDue.agreed ? `Work back ${day}, agreed` : `Agree: work back ${day}`}
    </Target>
  );
}
