namespace PlatformForge.Platforms.Requests;

/// <summary>A sweep of the same vehicles with less play, for telling what play costs.</summary>
/// <param name="Allowance">The play that comes on top of it, by its name in the budget.</param>
/// <param name="Without">What is swept without it and without those that follow it.</param>
public sealed record PlayStep(string Allowance, Clearance.SweptEnvelope Without);

/// <summary>
/// What makes up the reach that the coping needs, station by station on those of the requirement: the bare reach of the vehicles and what each
/// allowance adds to it. Bare reach and costs add up to what is required.
/// </summary>
/// <param name="Bare">Reach of the vehicles without any play, mm.</param>
/// <param name="Costs">One an allowance, in the order of the budget: play first, since it is swept, then what is added.</param>
public sealed record AllowanceTrace(double[] Bare, IReadOnlyList<AllowanceCost> Costs);

/// <summary>What one allowance costs along a platform.</summary>
/// <param name="Name">Its name in the budget.</param>
/// <param name="Amount">How much farther away it keeps the coping at each station, mm.</param>
public sealed record AllowanceCost(string Name, double[] Amount)
{
    /// <summary>Name of what it takes to keep the budget in every direction and not only square to the track.</summary>
    public const string EveryDirection = "the same in every direction";
}
