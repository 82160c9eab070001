/** Whether the lines meet at each seam, in words, and by how much they part where they cannot. */
import { say } from '../../../shared-core/wording/say.ts';
import { useMemo } from 'react';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { meetingReport, type SeamMeeting } from '../../../shared-core/quilting/meeting.ts';
import { Figure } from '../../parts/figures/Figure.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './QuiltingRoom.module.css';

export function Meetings({ plan }: { plan: CoatPlan }) {
  const meetings = useMemo(() => meetingReport(plan), [plan]);
  const apart = meetings.filter((meeting) => !meeting.meets);
  return (
    <section aria-labelledby="meeting">
      <h2 id="meeting" className={style.title}>
        {say('meetings.where-they-meet')}
      </h2>
      {meetings.length === 0 && <p className="quiet">{say('meetings.no-two-quilted-pieces-are-sewn')}</p>}
      {meetings.length > 0 && (
        <>
          <p className={style.lead}>
            {apart.length === 0
              ? say('meetings.every-line-meets-its-partner')
              : say('meetings.the-lines-meet-at-of-seams', {
                  meetingsCount: meetings.length - apart.length,
                  meetingsCount2: meetings.length,
                })}
          </p>
          <DataTable
            className={style.meetings}
            rows={meetings}
            keyOf={({ seamId, a, b }) => `${seamId} ${a.pieceId} ${b.pieceId}`}
            columns={[
              {
                head: say('common.seam'),
                cell: ({ says, unmatchedCount }) => (
                  <>
                    {says}
                    {unmatchedCount > 0 && (
                      <span className="quiet">
                        {' '}
                        {say('meetings.lines-have-no-partner', { unmatchedCount })}
                      </span>
                    )}
                  </>
                ),
              },
              {
                head: say('meetings.apart-by-at-most'),
                align: 'end',
                cell: (meeting) => <Apart meeting={meeting} />,
              },
            ]}
          />
        </>
      )}
    </section>
  );
}

function Apart({ meeting }: { meeting: SeamMeeting }) {
  if (meeting.crossings.length === 0) return <span className="quiet">{say('meetings.none-to-compare')}</span>;
  if (meeting.largestGapMm < 0.05) return <span className="quiet">{say('meetings.nothing')}</span>;
  return (
    <Figure
      quantity="length"
      value={meeting.largestGapMm}
      options={{ unit: { metric: 'mm', imperial: 'in' } }}
    />
  );
}
