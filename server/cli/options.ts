/** The words of options, apart from the commands that they belong to: help is given without loading these. */
export const CHECK_FORMATS = ['text', 'json'] as const;
export const CALC_FORMATS = ['table', 'json', 'csv'] as const;
export const UNITS = ['si', 'ip'] as const;
/** The worst first: each stands for itself and for those before it. */
export const FAIL_ON = ['error', 'warning', 'info'] as const;
