/** What a supplier asks for a delivery. */
import { say } from '../../../shared-core/wording/say.ts';
import type { SupplierRow } from '../../../shared-core/contract/offer-calls.ts';
import { useChange } from '../../client/queries/changes.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { FormQuantity, FormText } from '../../parts/forms/FormFields.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import { useTypedForm } from '../../parts/forms/typed-form.ts';
import style from './SuppliersRoom.module.css';
import { supplierFields, supplierForm } from './typed-supplier.ts';

export interface SupplierFormProps {
  /** Null for a new one. */
  readonly supplier: SupplierRow | null;
  readonly onClose: () => void;
}

export function SupplierForm({ supplier, onClose }: SupplierFormProps) {
  const { settings } = useWorkshop().facts;
  const { make: saveSupplier } = useChange('saveSupplier');
  const { control, sheet } = useTypedForm({
    ...supplierForm(supplier, settings),
    subject: say('supplier-form.the-supplier'),
    save: async (read) => {
      const answer = await saveSupplier(read);
      return answer.ok ? [] : answer.problems;
    },
  });
  return (
    <FormSheet
      title={supplier ? supplier.name : say('supplier-form.new-supplier')}
      saveLabel={say('supplier-form.save-the-supplier')}
      onClose={onClose}
      {...sheet}
    >
      {!supplier && <FormText control={control} name="name" label={say('common.name')} />}
      <div className={style.pair}>
        <FormQuantity control={control} name="delivery" {...supplierFields.delivery} />
        <FormQuantity control={control} name="freeFrom" {...supplierFields.freeFrom} />
      </div>
      <FormQuantity control={control} name="days" {...supplierFields.days} />
    </FormSheet>
  );
}
