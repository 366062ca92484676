/** Records of each open format for measuring speed: reading number `i`, at the time `when`. */
export const value = (i: number): number => 90 + ((i * 37) % 120);

export const observation = (i: number, when: string) => ({
  resourceType: 'Observation',
  id: `o${i}`,
  status: 'final',
  code: { coding: [{ system: 'http://loinc.org', code: '99504-3' }] },
  subject: { reference: 'Patient/p' },
  effectiveDateTime: when,
  valueQuantity: { value: value(i), unit: 'mg/dl', system: 'http://unitsofmeasure.org', code: 'mg/dL' },
});

export const point = (i: number, when: string) => ({
  header: { uuid: `u${i}`, schema_id: { namespace: 'omh', name: 'blood-glucose', version: '4.0' } },
  body: {
    blood_glucose: { value: value(i), unit: 'mg/dL' },
    specimen_source: 'interstitial fluid',
    effective_time_frame: { date_time: when },
  },
});
