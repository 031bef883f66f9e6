namespace PlatformForge.Platforms;

/// <summary>
/// What the vehicles need along a platform, on the even stations of the swept envelope: a coping edge farther away than
/// <see cref="Required"/> everywhere is safe. All in mm from the centreline, on the platform's side.
/// </summary>
/// <param name="Stations">Chainages, evenly spaced.</param>
/// <param name="Swept">Reach of the vehicles themselves.</param>
/// <param name="Budget">Constant allowances added to it, mm.</param>
/// <param name="GoverningVehicle">Index into <paramref name="Vehicles"/> of the vehicle that reaches farthest, one a station.</param>
/// <param name="GoverningPart">Name of its part that does, one a station.</param>
/// <param name="Vehicles">Names of the vehicles, in the order of the project.</param>
public sealed record RequirementTrace(double[] Stations, double[] Swept, double Budget, int[] GoverningVehicle, string[] GoverningPart, IReadOnlyList<string> Vehicles)
{
    /// <summary>Least reach of the coping per station, mm, which keeps the budget in every direction; null when it is the budget square to the track.</summary>
    public double[]? Kept { get; init; }

    /// <summary>What it is made of; null where that was not asked for.</summary>
    public AllowanceTrace? Allowances { get; init; }

    /// <summary>Least reach of the coping at a station by index, mm.</summary>
    public double Required(int station) => Kept?[station] ?? Swept[station] + Budget;
}
