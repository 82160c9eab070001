/** What is wrong with the workshop's file though it is open, above whatever room is shown, until the maker has read it. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../forms/Button.tsx';
import { Problems } from './Problems.tsx';
import style from './Problems.module.css';

export function FileProblems() {
  const { fileProblems } = useWorkshop().facts;
  const [isRead, setIsRead] = useState(false);
  if (fileProblems.length === 0 || isRead) return null;
  return (
    <div className={style.again}>
      <Problems problems={fileProblems} />
      <Button onClick={() => setIsRead(true)}>{say('file-problems.i-have-read-this')}</Button>
    </div>
  );
}
