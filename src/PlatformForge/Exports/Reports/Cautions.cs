namespace PlatformForge.Exports.Reports;

/// <summary>Lines of caution that go with every result.</summary>
public static class Cautions
{
    public static IReadOnlyList<string> Lines { get; } =
    [
        "For model railways only. No figure here may be used for a railway that carries people, nor to show that any standard is met.",
        "Run your own trains first: push every vehicle through by hand, both ways, before anything is fixed. Clearance depends on your measuring, your vehicles' play and your printer.",
        "Printing gives off fine particles and vapours. Ventilate or extract, and do not leave a printer unattended without a smoke alarm.",
        "Sand printed plastic, filler and paint wet, with a dust mask and glasses, and clear up the dust.",
        "Instant glue, solvents, thinners and spray paint: fresh air, gloves, no flames; read their labels.",
        "Knives, drills and soldering irons: cut away from yourself, protect your eyes, use a stand for the iron.",
        "Lights in a platform: isolated low voltage with resistors and a fuse, never mains.",
        "PLA softens near 60 degrees Celsius: keep it from sun, lofts and warm lamps. Keep small parts from children and pets.",
    ];
}
