namespace PlatformForge.Exports.Workshop;

/// <summary>Lines of caution that go with every result, each by what it is about.</summary>
public static class Cautions
{
    private const string Models = "For model railways only. No figure here may be used for a railway that carries people, nor to show that any "
        + "standard is met.";
    private const string OwnTrains =
        "Run your own trains first: push every vehicle through by hand, both ways, before anything is fixed. Clearance depends on your measuring, "
            + "your vehicles' play and your printer.";

    private const string Printing = "Printing gives off fine particles and vapours. Ventilate or extract, and do not leave a printer unattended "
        + "without a smoke alarm.";
    private const string Sanding = "Sand printed plastic, filler and paint wet, with a dust mask and glasses, and clear up the dust.";
    private const string Solvents = "Instant glue, solvents, thinners and spray paint: fresh air, gloves, no flames; read their labels.";
    private const string Blades = "Knives, drills and soldering irons: cut away from yourself, protect your eyes, use a stand for the iron.";
    private const string Lights = "Lights in a platform: isolated low voltage with resistors and a fuse, never mains.";
    private const string Heat = "PLA softens near 60 degrees Celsius: keep it from sun, lofts and warm lamps. Keep small parts and magnets from "
        + "children and pets.";

    public static IReadOnlyList<string> Lines { get; } = [Models, OwnTrains, Printing, Sanding, Solvents, Blades, Lights, Heat];

    /// <summary>Those that apply at a stage of the work.</summary>
    /// <param name="stage">The stage.</param>
    /// <param name="hasWires">Whether anything of the platform is lit.</param>
    public static IReadOnlyList<string> At(WorkStage stage, bool hasWires) => stage switch
    {
        WorkStage.Print => [Printing, Heat],
        WorkStage.Cut or WorkStage.SetOut => [Blades],
        WorkStage.Join => [Solvents, Sanding],
        WorkStage.Paint => [Solvents, Sanding],
        WorkStage.Fit => hasWires ? [Solvents, Blades, Lights] : [Solvents, Blades],
        _ => [OwnTrains],
    };
}
