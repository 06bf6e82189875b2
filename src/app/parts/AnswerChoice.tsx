import { ANSWERS, type Answer } from '../../record/parts.ts';
import { ANSWER_NAMES } from '../words/inspection.ts';
import { Segments } from './Segments.tsx';

type Props = {
  readonly question: string;
  readonly answer: Answer | null;
  readonly onAnswer: (answer: Answer | null) => void;
};

export function AnswerChoice({ question, answer, onAnswer }: Props) {
  return (
    <Segments legend={question} values={ANSWERS} names={ANSWER_NAMES} value={answer} onChange={onAnswer} />
  );
}
