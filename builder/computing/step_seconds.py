"""Standard seconds of one step, as a learner is shown them: basic time with the allowances of its operation."""

from __future__ import annotations

from builder.model import MachineKind, OperationTime, StepTime


def step_standard(step: StepTime, time: OperationTime, kind: MachineKind) -> float:
    """Standard time of a step from its begin to its end, each time it is done [s].

    t = hand × (1 + a) + run × (1 + a where the operator paces the machine, else 1)

    a : the operation's allowances together, a share of its basic time; a machine that paces itself takes no rest
    Where the operator paces the machine, or there is none, all steps × how often they are done add up to the
    operation's standard minutes; elsewhere the run is the machine's time and only a share of it is labour.
    Source: definitions of standard and machine time (README).
    """
    factor = 1.0 + sum(share for _, share in time.allowance)
    return step.hand_s * factor + step.run_s * (factor if kind.paced != "machine" else 1.0)
