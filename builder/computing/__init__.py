"""Door of the computing room: objects to numbers, pure functions. It never sees a file, a date or a locale."""

from builder.computing.allowance import AllowanceLine, StationAllowance, allowance_factor, station_allowance
from builder.computing.machine_time import chop_time, contour_time, cycle_time, seam_time, tack_time
from builder.computing.material_use import operation_use, product_use
from builder.computing.motion import corner_speeds, path_time, segment_time
from builder.computing.occurrence import lots_of, occurrences, pieces_a_bobbin
from builder.computing.operation_time import attendance_share, labour, operation_time, rested_inside
from builder.computing.plant_time import compute, operation_dimensions, variants
from builder.computing.relaxation import OWN, PUBLISHED, StrainFactor, rest_in_spell, strain_factors
from builder.computing.sewn_thread import SewnThread, thread_names, thread_sewn
from builder.computing.spread import (
    drift_z,
    interval,
    modified_z,
    readings_normal,
    readings_root,
    readings_t_iterated,
    readings_t_pilot,
    sample_sd,
    t_quantile,
    z_quantile,
)
from builder.computing.study_summary import cycle_values, readings_needed, step_study, summarise
from builder.computing.study_time import basic_time
from builder.computing.thread_use import (
    ThreadUse,
    bartack_thread,
    ratio_factors,
    sampled_factors,
    tack_thread,
    tail_thread,
    thread_factors,
)

__all__ = [
    "cycle_values",
    "drift_z",
    "interval",
    "modified_z",
    "readings_needed",
    "readings_normal",
    "readings_root",
    "readings_t_iterated",
    "readings_t_pilot",
    "sample_sd",
    "step_study",
    "summarise",
    "t_quantile",
    "z_quantile",
    "AllowanceLine",
    "OWN",
    "PUBLISHED",
    "StationAllowance",
    "SewnThread",
    "StrainFactor",
    "ThreadUse",
    "allowance_factor",
    "attendance_share",
    "bartack_thread",
    "basic_time",
    "chop_time",
    "compute",
    "contour_time",
    "corner_speeds",
    "cycle_time",
    "labour",
    "lots_of",
    "occurrences",
    "operation_dimensions",
    "operation_time",
    "operation_use",
    "path_time",
    "pieces_a_bobbin",
    "product_use",
    "ratio_factors",
    "rest_in_spell",
    "rested_inside",
    "sampled_factors",
    "seam_time",
    "segment_time",
    "station_allowance",
    "strain_factors",
    "tack_thread",
    "tack_time",
    "tail_thread",
    "thread_factors",
    "thread_names",
    "thread_sewn",
    "variants",
]
