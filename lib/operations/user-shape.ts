import { z } from "zod";
import { USER_ROLES } from "#lib/domain/facts/user.ts";

/** A person as typed by an admin. */
export const UserShape = z.object({
  name: z
    .string()
    .max(200)
    .refine((text) => text.trim() !== "", "Enter the person's name"),
  email: z.email("Enter an email address, e.g. dana@example.com").max(254),
  role: z.enum(USER_ROLES, { error: "Choose a role" }),
});
