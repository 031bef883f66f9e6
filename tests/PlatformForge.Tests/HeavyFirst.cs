using Xunit;
using Xunit.Abstractions;

[assembly: TestCollectionOrderer("PlatformForge.Tests.HeavyFirst", "PlatformForge.Tests")]

namespace PlatformForge.Tests;

/// <summary>Classes that take longest begin first: one that began last would leave a core idle until it ends. A test fails or passes in any order.</summary>
public sealed class HeavyFirst : ITestCollectionOrderer
{
    private static readonly string[] Heavy =
    [
        "GuideTests", "BareWallTests", "AdviceForAnyLayingTests", "TrueMotionProperties", "SkewFacingTests", "StripPaintTests", "CodesHeardTests",
        "JointedLinesTests", "FinishedSampleTests", "FolderKillTests", "SimulatedSurveyTests", "SurveyedProjectTests", "FoundAgainstAsked", "HonestyTests",
        "MeshBoundsTests", "SurveyPipelineTests", "FirstFileTests", "CauseTests", "IslandRampTests", "NamedCaseTests", "ProofTests", "AdviceTests",
        "ElevationMeshTests", "EveryLeafTests", "SayingOfReadingsTests", "RunawayTests", "BuildTests", "SectionalPageTests", "StockTests",
        "ReadingAdviceTests", "ProfileTests", "BetterMeasuringTests", "ManyPointsTests", "SurveyFitTests", "LineArtTests", "JointsInDoubtTests",
        "SectionalTrackTests", "SessionLaws", "StreamedBuildTests", "SlideGaugeTests", "RandomBlockProperties", "ThornhitheTests", "WriterTests",
        "RoomOrderTests", "KeyEndTests", "IslandHeightTests", "SkewRampTests",
    ];

    public IEnumerable<ITestCollection> OrderTestCollections(IEnumerable<ITestCollection> testCollections) => testCollections.OrderBy(Place);

    private static int Place(ITestCollection collection)
    {
        int place = Array.FindIndex(Heavy, name => collection.DisplayName.EndsWith('.' + name, StringComparison.Ordinal));
        return place < 0 ? Heavy.Length : place;
    }
}
