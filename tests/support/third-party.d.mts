export function productionPackages(): { name: string; licence: string }[];
export function thirdPartyText(): string;
