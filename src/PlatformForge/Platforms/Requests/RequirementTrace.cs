using PlatformForge.Clearance.Requests;

namespace PlatformForge.Platforms.Requests;

/// <summary>
/// What the vehicles need along a platform, on the even stations of the swept envelope: a coping edge farther away than
/// <see cref="Required"/> everywhere is safe. All in mm from the centreline, on the platform's side.
/// </summary>
/// <param name="Stations">Chainages, evenly spaced.</param>
/// <param name="Swept">Reach of the vehicles themselves, as it counts for the coping.</param>
/// <param name="Budget">Constant allowances added to it, mm.</param>
/// <param name="GoverningVehicle">Index into <paramref name="Vehicles"/> of the vehicle that reaches farthest, one a station.</param>
/// <param name="GoverningPart">Name of its part that does, one a station.</param>
/// <param name="Vehicles">Names of the vehicles, those of the faced track first, each in the order of the project; a vehicle of several tracks is there once
/// for each.</param>
public sealed record RequirementTrace(
    double[] Stations,
    double[] Swept,
    double Budget,
    int[] GoverningVehicle,
    string[] GoverningPart,
    IReadOnlyList<string> Vehicles)
{
    /// <summary>Least reach of the coping per station, mm, which keeps the budget in every direction; null when it is the budget square to the track.</summary>
    public double[]? Kept { get; init; }

    /// <summary>Whether, per station, the part that reaches farthest stays under the coping, so that it is the wall which it must not meet: its swept reach
    /// is then told less
    /// the overhang. Null where that was not asked for.</summary>
    public bool[]? AtWall { get; init; }

    /// <summary>What it is made of; null where that was not asked for.</summary>
    public AllowanceTrace? Allowances { get; init; }

    /// <summary>For each of <see cref="Vehicles"/> the name of its track where that is not the faced one, and an empty text where it is.</summary>
    public IReadOnlyList<string> OtherTracks { get; init; } = [];

    /// <summary>The other track that a vehicle by index runs on; empty for the faced one.</summary>
    public string OtherTrack(int vehicle) => vehicle >= 0 && vehicle < OtherTracks.Count ? OtherTracks[vehicle] : "";

    /// <summary>A vehicle by index as it is told: by its name, and with its track where that is another one.</summary>
    public string Called(int vehicle) => Called(Vehicles[vehicle], OtherTrack(vehicle));

    /// <summary>The same of a vehicle by name.</summary>
    public static string Called(string vehicle, string otherTrack) => otherTrack.Length == 0 ? vehicle : $"{vehicle} on track '{otherTrack}'";

    /// <summary>Index of the vehicle that a name means on the faced track, or on another; −1 for none.</summary>
    public int IndexOf(string vehicle, string otherTrack = "")
    {
        for (int i = 0; i < Vehicles.Count; i++)
        {
            if (Vehicles[i] == vehicle && OtherTrack(i) == otherTrack)
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>Index of the vehicle whose part it is.</summary>
    public int IndexOf(PartReach part) => IndexOf(part.Vehicle.Name, part.OtherTrack);

    /// <summary>Least reach of the coping at a station by index, mm.</summary>
    public double Required(int station) => Kept?[station] ?? Swept[station] + Budget;
}
