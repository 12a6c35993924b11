/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Solids, records and what follows from them, as in the header.
 */
#include "physics/mass.h"

#include <assert.h>

#include "physics/central.h"

PhBody
ph_body_cylinder (double mass_kg, double start_m, double length_m, double outer_radius_m,
                  double inner_radius_m)
{
  double radii = outer_radius_m * outer_radius_m + inner_radius_m * inner_radius_m;
  double axial = mass_kg * radii / 2;
  double transverse = mass_kg * (3 * radii + length_m * length_m) / 12;
  return (PhBody){ mass_kg, { start_m + length_m / 2, 0, 0 }, { axial, transverse, transverse } };
}

PhBody
ph_body_box (double mass_kg, PhVec3 com_m, PhVec3 size_m)
{
  double x = size_m.x * size_m.x, y = size_m.y * size_m.y, z = size_m.z * size_m.z;
  double twelfth = mass_kg / 12;
  return (PhBody){ mass_kg, com_m, { twelfth * (y + z), twelfth * (x + z), twelfth * (x + y) } };
}

PhBody
ph_body_join_on_axis (PhBody a, PhBody b)
{
  if (b.mass_kg == 0)
    return a;
  if (a.mass_kg == 0)
    return b;
  double mass = a.mass_kg + b.mass_kg;
  double apart = b.com_m.x - a.com_m.x;
  double shift = a.mass_kg * (b.mass_kg / mass) * apart * apart;
  PhVec3 inertia = ph_vec3_add (a.inertia_kg_m2, b.inertia_kg_m2);
  inertia.y += shift;
  inertia.z += shift;
  double com = (a.mass_kg * a.com_m.x + b.mass_kg * b.com_m.x) / mass;
  return (PhBody){ mass, { com, 0, 0 }, inertia };
}

PhMass
ph_mass_of_body (const PhBody *body, PhVec3 root_m, const PhFrame *frame)
{
  PhCentral central;
  ph_central_of_body (body, root_m, frame, &central);
  return ph_central_record (&central);
}

PhMass
ph_mass_add (PhMass a, PhMass b)
{
  return (PhMass){ a.mass_kg + b.mass_kg, ph_vec3_add (a.moment_kg_m, b.moment_kg_m),
                   ph_sym3_add (a.inertia_kg_m2, b.inertia_kg_m2) };
}

PhMass
ph_mass_subtract (PhMass a, PhMass b)
{
  PhSym3 i = a.inertia_kg_m2, j = b.inertia_kg_m2;
  return (
      PhMass){ a.mass_kg - b.mass_kg,
               ph_vec3_sub (a.moment_kg_m, b.moment_kg_m),
               { i.xx - j.xx, i.yy - j.yy, i.zz - j.zz, i.xy - j.xy, i.xz - j.xz, i.yz - j.yz } };
}

static void
add_principal (PhMassProperties *properties)
{
  ph_sym3_eigen (properties->inertia_com_kg_m2, properties->principal_kg_m2,
                 properties->principal_axes);
}

PhMassProperties
ph_central_properties (const PhCentral *central)
{
  assert (central->mass_kg > 0);
  PhMassProperties properties;
  properties.mass_kg = central->mass_kg;
  properties.com_m = ph_vec3_scale (central->moment_kg_m, 1 / central->mass_kg);
  properties.inertia_com_kg_m2 = central->inertia_com_kg_m2;
  properties.inertia_grip_kg_m2 =
      ph_sym3_add_point (central->inertia_com_kg_m2, central->mass_kg, properties.com_m);
  add_principal (&properties);
  return properties;
}

PhMassProperties
ph_mass_properties (const PhMass *mass)
{
  assert (mass->mass_kg > 0);
  PhMassProperties properties;
  properties.mass_kg = mass->mass_kg;
  properties.com_m = ph_vec3_scale (mass->moment_kg_m, 1 / mass->mass_kg);
  properties.inertia_grip_kg_m2 = mass->inertia_kg_m2;
  properties.inertia_com_kg_m2 =
      ph_sym3_add_point (mass->inertia_kg_m2, -mass->mass_kg, properties.com_m);
  add_principal (&properties);
  return properties;
}

PhSym3
ph_inertia_about (double mass_kg, PhVec3 com_m, PhSym3 inertia_com_kg_m2, PhVec3 at_m)
{
  return ph_sym3_add_point (inertia_com_kg_m2, mass_kg, ph_vec3_sub (com_m, at_m));
}
