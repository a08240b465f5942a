-- A figure's JSON now says how it leans on other figures of its day: 'correlations'.
-- Those of an older archive don't, so that their days were reduced by another method than today's.

update reduction set method = 'before correlations were kept';
