namespace TenderKit.Tendering.Tests.Corpus;

/// <summary>Exports of survey forms that hold lines and areas, of our own making.</summary>
internal static class SurveyFaults
{
    public static IEnumerable<CorpusFile> All()
    {
        yield return CorpusFile.Csv(
            "80-survey-trace", "a survey form's export: a road walked, in one cell, with no length and no position of its own",
            "id,name,width_m,geotrace\n"
            + "T1,Market road,6,\"14.2500 -4.2500 271.4 4.2;14.2510 -4.2500 271.0 3.9;14.2510 -4.2490 270.2 5.1\"\n"
            + "T2,Clinic street,5,\"14.2550 -4.2550 270 4; 14.2560 -4.2550 270 62\"\n"
            + "T3,Broken walk,5,\"14.2550 -4.2550 270 4; 14.2560\"\n"
            + "T4,One step,5,14.2550 -4.2550 270 4\n",
            same: false);
        yield return CorpusFile.Csv(
            "81-survey-shape", "a survey form's export: yards walked round, the last point the first again or not",
            "id,name,geoshape,remarks\n"
            + "Y1,Bus yard,\"14.2600 -4.2600 0 5;14.2600 -4.2594 0 5;14.2604 -4.2594 0 5;14.2604 -4.2600 0 5;14.2600 -4.2600 0 5\",closed\n"
            + "Y2,Market,\"14.2620,-4.2600;14.2620,-4.2596;14.2623,-4.2596;14.2623,-4.2600\",open and without altitude\n"
            + "Y3,Bow tie,\"14.2640 -4.2600;14.2644 -4.2594;14.2640 -4.2594;14.2644 -4.2600\",crosses itself\n",
            same: false);
        yield return CorpusFile.Csv(
            "82-survey-accuracy", "a survey form's export: four columns of position, one taken to 120 m",
            "site/id,site/name,site/kind,site/road_length_m,site/road_width_m,_gps_latitude,_gps_longitude,_gps_altitude,_gps_precision\n"
            + PlainList.Lines(s => $"{s.Id},{s.Name},{s.Kind},{s.LengthM},{s.WidthM},{s.Latitude},{s.Longitude},271.4,{(s.Id == "S3" ? 120 : 4.5)}"));
        yield return CorpusFile.Csv(
            "83-side-of-road", "the side of the poles in French, and a side nobody knows",
            "id,nom,latitude,longitude,longueur (m),largeur (m),cote des poteaux\nS1,Market road,14.2508,-4.2512,250,6,droite\nS2,School path,14.2531,-4.2489,180,3,gauche\nS3,Clinic street,14.2575,-4.2548,1240,7.5,north\n",
            same: false);
    }
}
